import { expect, test } from 'vitest';
import { compileKernel, KERNELS } from '../../.tools/kernel.ts';
import { KERNEL_BASE64 } from '../../src/wind/kernel/wasm-bytes.ts';

test('the shelter kernel that is run is the one whose source is here', async () => {
  const fromSource = Buffer.from(await compileKernel(KERNELS.wind)).toString('base64');
  expect(KERNEL_BASE64 === fromSource, 'run `npm run kernel`').toBe(true);
});
