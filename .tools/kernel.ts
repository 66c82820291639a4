// npm run kernel: compiles the engines' hot code (src/*/kernel/assembly) to WebAssembly and files the bytes where the
// engines read them, so that nothing has to be compiled to run or to test it.
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import asc from 'assemblyscript/asc';

const FLAGS = ['--runtime', 'stub', '-O3', '--converge', '--noAssert', '--enable', 'simd'];

/** The source of each kernel, and the folder in which its bytes are filed. */
export const KERNELS = {
  light: 'src/light/kernel/assembly/shadows.ts',
  wind: 'src/wind/kernel/assembly/swaths.ts',
} as const;

/** The kernel's bytes as its source gives them now. */
export async function compileKernel(source: string): Promise<Uint8Array> {
  const written = new Map<string, string | Uint8Array>();
  const { error, stderr } = await asc.main([source, '--outFile', 'kernel.wasm', ...FLAGS], {
    writeFile: (name: string, contents: string | Uint8Array) => void written.set(name, contents),
  });
  if (error) throw new Error(`The kernel ${source} does not compile: ${stderr.toString()}`);
  const bytes = written.get('kernel.wasm');
  if (!(bytes instanceof Uint8Array)) throw new Error('The compiler wrote no bytes.');
  return bytes;
}

/** The module in which bytes are filed. */
const moduleOf = (source: string, bytes: Uint8Array): string =>
  `/** Made from ${source.replace(/.*kernel\//, '')} by \`npm run kernel\`; a test fails where it is older than its source. */\nexport const KERNEL_BASE64 =\n  '${Buffer.from(bytes).toString('base64')}';\n`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href)
  for (const source of Object.values(KERNELS)) {
    const file = new URL(`../${source.replace(/assembly\/.*/, 'wasm-bytes.ts')}`, import.meta.url);
    writeFileSync(file, moduleOf(source, await compileKernel(source)));
  }
