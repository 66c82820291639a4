/**
 * The compiled kernel (assembly/shadows.ts) and its memory. An instance belongs to one field of light; its memory goes
 * when the instance does.
 */
import { startWasm, type WasmMemory } from '../../numeric/wasm-memory.ts';
import { KERNEL_BASE64 } from './wasm-bytes.ts';

/** What the kernel offers; see assembly/shadows.ts. All addresses are bytes into its memory. */
interface KernelFunctions {
  mostCorners(): number;
  empty(rows: number): void;
  anyTouched(): number;
  touchedBox(out: number): void;
  cast(
    tile: number,
    ray: number,
    things: number,
    first: number,
    end: number,
    classCount: number,
    layer: number,
    hand: number,
    handCount: number,
  ): void;
  blockByLand(tile: number, ray: number, behind: number, landSlots: number, clip: number): void;
  layPath(
    tile: number,
    ray: number,
    path: number,
    on: number,
    off: number,
    leafClass: number,
    classCount: number,
    clip: number,
  ): void;
  addLosses(tile: number, ray: number): void;
  addChange(tile: number, ray: number, sign: number): void;
  lossesOf(tile: number, state: number, out: number): void;
  wipe(tile: number, ray: number): void;
  sumGains(tile: number, ray: number, counted: number, out: number): void;
  combine(tile: number, terms: number, count: number, bias: number, most: number, out: number): void;
}

export type Kernel = KernelFunctions & WasmMemory;

export const startKernel = (): Kernel => startWasm<KernelFunctions>(KERNEL_BASE64);
