// npm run kernel: compiles the light engine's hot code (src/light/kernel/assembly) to WebAssembly and files the bytes
// where the engine reads them, so that nothing has to be compiled to run or to test it.
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import asc from 'assemblyscript/asc';

const FLAGS = ['--runtime', 'stub', '-O3', '--converge', '--noAssert', '--enable', 'simd'];

/** The kernel's bytes as the source gives them now. */
export async function compileKernel(): Promise<Uint8Array> {
  const written = new Map<string, string | Uint8Array>();
  const { error, stderr } = await asc.main(
    ['src/light/kernel/assembly/shadows.ts', '--outFile', 'kernel.wasm', ...FLAGS],
    { writeFile: (name: string, contents: string | Uint8Array) => void written.set(name, contents) },
  );
  if (error) throw new Error(`The kernel does not compile: ${stderr.toString()}`);
  const bytes = written.get('kernel.wasm');
  if (!(bytes instanceof Uint8Array)) throw new Error('The compiler wrote no bytes.');
  return bytes;
}

/** The module in which bytes are filed. */
const moduleOf = (bytes: Uint8Array): string =>
  `/** Made from assembly/shadows.ts by \`npm run kernel\`; a test fails where it is older than its source. */\nexport const KERNEL_BASE64 =\n  '${Buffer.from(bytes).toString('base64')}';\n`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const file = new URL('../src/light/kernel/wasm-bytes.ts', import.meta.url);
  writeFileSync(file, moduleOf(await compileKernel()));
}
