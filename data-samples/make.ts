import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeSamples } from './samples.ts';

/** `npm run samples`: writes the samples beside this script. */
for (const [path, bytes] of makeSamples()) {
  const file = join(import.meta.dirname, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, bytes);
  console.log(`${path}: ${bytes.length} bytes`);
}
