/** The compiled shelter kernel (assembly/swaths.ts) and its memory, which goes when the instance does. */
import { startWasm, type WasmMemory } from '../../numeric/wasm-memory.ts';
import { KERNEL_BASE64 } from './wasm-bytes.ts';

/** What the kernel offers; see assembly/swaths.ts. All addresses are bytes into its memory. */
interface KernelFunctions {
  setTile(
    columns: number,
    rows: number,
    cellM: number,
    firstXM: number,
    rowY: number,
    deficits: number,
  ): void;
  setDeficits(deficits: number): void;
  setWind(upX: number, upY: number): void;
  clearDeficits(): void;
  layLine(x1M: number, y1M: number, x2M: number, y2M: number, heightM: number, table: number): void;
  layEnd(xM: number, yM: number, heightM: number, side: number, gains: number): void;
  layBeside(
    x1M: number,
    y1M: number,
    x2M: number,
    y2M: number,
    height1M: number,
    height2M: number,
    besideH: number,
    deficitsAtLine: number,
  ): void;
  layField(
    field: number,
    across: number,
    along: number,
    nodeM: number,
    firstAcrossM: number,
    firstAlongM: number,
  ): void;
  applyRelief(relief: number, least: number, most: number): void;
  chainDeficits(second: number): void;
  fillLine(rows: number, reachNodes: number, from: number, to: number, out: number): void;
  fillField(
    field: number,
    across: number,
    along: number,
    trees: number,
    count: number,
    feltRows: number,
    mostDensity: number,
    table: number,
    tableNodes: number,
  ): void;
  addDirection(seasons: number, first: number): void;
}

export type ShelterKernel = KernelFunctions & WasmMemory;

export const startShelterKernel = (): ShelterKernel => startWasm<KernelFunctions>(KERNEL_BASE64);
