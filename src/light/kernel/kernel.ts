/**
 * The compiled kernel (assembly/shadows.ts) and its memory. An instance belongs to one field of light; its memory goes
 * when the instance does.
 */
import { KERNEL_BASE64 } from './wasm-bytes.ts';

/** What the kernel offers; see assembly/shadows.ts. All addresses are bytes into its memory. */
interface KernelFunctions {
  readonly memory: WebAssembly.Memory;
  firstFreeByte(): number;
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

export interface Kernel extends KernelFunctions {
  /** Room that is never given back, on a multiple of 16 bytes and zeroed. */
  take(bytes: number): number;
  /** Views of the memory; made anew after `take`, which may move the memory. */
  readonly bytes: Uint8Array;
  readonly integers: Int32Array;
  readonly floats: Float32Array;
  readonly doubles: Float64Array;
}

const PAGE = 65536;
let compiled: WebAssembly.Module | null = null;

export function startKernel(): Kernel {
  compiled ??= new WebAssembly.Module(Uint8Array.from(atob(KERNEL_BASE64), (c) => c.charCodeAt(0)));
  const functions = new WebAssembly.Instance(compiled).exports as unknown as KernelFunctions;
  const { memory } = functions;
  let free = functions.firstFreeByte();
  let bytes = new Uint8Array(memory.buffer);
  let integers = new Int32Array(memory.buffer);
  let floats = new Float32Array(memory.buffer);
  let doubles = new Float64Array(memory.buffer);
  return {
    ...functions,
    take(size) {
      const at = free;
      free = (free + size + 15) & ~15;
      const missing = free - memory.buffer.byteLength;
      if (missing > 0) {
        memory.grow(Math.ceil(missing / PAGE));
        bytes = new Uint8Array(memory.buffer);
        integers = new Int32Array(memory.buffer);
        floats = new Float32Array(memory.buffer);
        doubles = new Float64Array(memory.buffer);
      }
      return at;
    },
    get bytes() {
      return bytes;
    },
    get integers() {
      return integers;
    },
    get floats() {
      return floats;
    },
    get doubles() {
      return doubles;
    },
  };
}
