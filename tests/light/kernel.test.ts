import { expect, test } from 'vitest';
import { compileKernel } from '../../.tools/kernel.ts';
import { KERNEL_BASE64 } from '../../src/light/kernel/wasm-bytes.ts';

test('the kernel that is run is the one whose source is here', async () => {
  const fromSource = Buffer.from(await compileKernel()).toString('base64');
  expect(KERNEL_BASE64 === fromSource, 'run `npm run kernel`').toBe(true);
});
