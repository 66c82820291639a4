import type { RunOptions } from '../jobs/messages.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { cellsInAll, type PatchToSum } from './patches.ts';

/** The result over the command's grid, and for each patch the result that holds its cells. */
export interface AllResults<Result> {
  readonly main: Result;
  readonly ofPatches: readonly { readonly patch: PatchToSum; readonly result: Result }[];
}

/** Computes the command's grid, then each patch that has cells or a height of its own, under one progress. */
export async function computeAll<Result>(
  grid: GridSpec,
  heightM: number,
  patches: readonly PatchToSum[],
  onProgress: (done: number) => void,
  compute: (grid: GridSpec, readingHeightM: number, options: RunOptions) => Promise<Result>,
): Promise<AllResults<Result>> {
  const all = cellsInAll(grid, patches);
  let done = 0;
  const part = async (partGrid: GridSpec, readingHeightM: number): Promise<Result> => {
    const share = cellCount(partGrid) / all;
    const before = done;
    const result = await compute(partGrid, readingHeightM, {
      onProgress: (inPart) => onProgress(before + inPart * share),
    });
    done = before + share;
    return result;
  };
  const main = await part(grid, heightM);
  const ofPatches: { patch: PatchToSum; result: Result }[] = [];
  for (const patch of patches)
    ofPatches.push({ patch, result: patch.apart ? await part(patch.grid, patch.readingHeightM) : main });
  onProgress(1);
  return { main, ofPatches };
}
