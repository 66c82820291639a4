// npm run leeglade: the command line, bundled when its sources have changed. From the sources themselves it would take
// over a second longer to start, and each of its worker threads as well.
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
} from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installIfMissing, root } from './install.mjs';

const bundles = join(root, '.cache', 'leeglade');
const entry = 'leeglade.mjs';
/** A bundle may still be in use by a command that runs: it goes when it has not been started for so long. */
const KEPT_MS = 24 * 3600 * 1000;

/** What the bundle is made from, by the dates and sizes of all files. */
function madeFrom() {
  const hash = createHash('sha256');
  const add = (path) => {
    const { mtimeMs, size } = statSync(join(root, path));
    hash.update(`${path} ${mtimeMs} ${size}\n`);
  };
  for (const folder of ['src', 'workers'])
    for (const file of readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
      if (file.isFile()) add(join(file.parentPath ?? file.path, file.name).slice(root.length));
  for (const file of ['package-lock.json', join('.tools', 'leeglade.mjs')]) add(file);
  return hash.digest('hex').slice(0, 16);
}

/** Into a folder of its own first: two commands may be started at once, and one that is broken off leaves no half. */
async function bundleInto(folder) {
  const { build } = await import('vite');
  mkdirSync(bundles, { recursive: true });
  const making = mkdtempSync(join(bundles, 'making-'));
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: 'node20',
      outDir: making,
      minify: false,
      rollupOptions: {
        input: { leeglade: 'src/cli/main.ts', 'engine-node': 'workers/engine-node.ts' },
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  });
  try {
    renameSync(making, folder);
  } catch (error) {
    rmSync(making, { recursive: true, force: true });
    if (!existsSync(join(folder, entry))) throw error;
  }
}

function removeOld(folder) {
  for (const name of readdirSync(bundles)) {
    const other = join(bundles, name);
    if (other !== folder && Date.now() - statSync(other).mtimeMs > KEPT_MS)
      rmSync(other, { recursive: true, force: true });
  }
}

installIfMissing();
const folder = join(bundles, madeFrom());
if (!existsSync(join(folder, entry))) {
  await bundleInto(folder);
  removeOld(folder);
}
const now = new Date();
utimesSync(folder, now, now);
await import(pathToFileURL(join(folder, entry)).href);
