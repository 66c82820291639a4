/** The memory of a WebAssembly kernel, handed out in pieces that are never given back. */
export interface WasmMemory {
  /** Room on a multiple of 16 bytes, zeroed. @returns its address, in bytes. */
  take(bytes: number): number;
  /** Views of the memory; made anew after `take`, which may move the memory. */
  readonly bytes: Uint8Array;
  readonly integers: Int32Array;
  readonly floats: Float32Array;
  readonly doubles: Float64Array;
}

/** What a kernel exports beside its own functions. */
interface Exported {
  readonly memory: WebAssembly.Memory;
  firstFreeByte(): number;
}

const PAGE = 65536;
const compiled = new Map<string, WebAssembly.Module>();

/**
 * A fresh instance of a kernel with its own memory, which goes when the instance does. A module is compiled once a
 * thread.
 */
export function startWasm<Functions extends object>(base64: string): Functions & WasmMemory {
  const module =
    compiled.get(base64) ?? new WebAssembly.Module(Uint8Array.from(atob(base64), (c) => c.charCodeAt(0)));
  compiled.set(base64, module);
  const functions = new WebAssembly.Instance(module).exports as unknown as Functions & Exported;
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
