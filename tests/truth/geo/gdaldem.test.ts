import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, describe, expect, it } from 'vitest';
import { slopeAndAspect } from '../../../src/geo/terrain.ts';
import { gdalIsHere } from '../../geo/gdal.ts';

const SAMPLE = join(import.meta.dirname, '../../../data-samples/sorrel-bank/sorrel-bank-ground.tif');
const folder = mkdtempSync(join(tmpdir(), 'gdaldem-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** First band of a raster, with its size and the side of its cells. */
async function raster(path: string) {
  const bytes = readFileSync(path);
  const image = await (await fromArrayBuffer(new Uint8Array(bytes).buffer)).getImage();
  const [values] = (await image.readRasters()) as unknown as [ArrayLike<number>];
  const columns = image.getWidth();
  const [cellM] = image.getResolution();
  return { columns, rows: image.getHeight(), cellM, values: Float32Array.from(values) };
}

/** What GDAL's own terrain program (gdaldem) makes of the sample. */
async function gdaldem(what: 'slope' | 'aspect'): Promise<Float32Array> {
  const path = join(folder, `${what}.tif`);
  execFileSync('gdaldem', [what, SAMPLE, path, '-q'], { stdio: ['ignore', 'ignore', 'inherit'] });
  return (await raster(path)).values;
}

describe.skipIf(!gdalIsHere)('slope and aspect of the sample terrain (needs gdaldem)', () => {
  it('are those of gdaldem on every cell that has eight neighbours', async () => {
    const ground = await raster(SAMPLE);
    const { columns, rows } = ground;
    // On the raster's own grid, as gdaldem has them.
    const ours = slopeAndAspect({ ...ground, westM: 0, northM: 0 }, 0);
    const [slopeDeg, aspectDeg] = [await gdaldem('slope'), await gdaldem('aspect')];
    let [slopeOff, wayOff, compared] = [0, 0, 0];
    for (let row = 1; row < rows - 1; row++)
      for (let column = 1; column < columns - 1; column++) {
        const cell = row * columns + column;
        slopeOff = Math.max(slopeOff, Math.abs(ours.slopeDeg[cell] - slopeDeg[cell]));
        if (aspectDeg[cell] === -9999 || Number.isNaN(ours.aspectDeg[cell])) {
          expect([cell, aspectDeg[cell], ours.aspectDeg[cell]]).toEqual([cell, -9999, Number.NaN]);
          continue;
        }
        const turnDeg = Math.abs(ours.aspectDeg[cell] - aspectDeg[cell]);
        const turnRad = (Math.min(turnDeg, 360 - turnDeg) * Math.PI) / 180;
        wayOff = Math.max(wayOff, turnRad * Math.tan((slopeDeg[cell] * Math.PI) / 180));
        compared++;
      }
    expect(compared).toBeGreaterThan(0.9 * columns * rows);
    // gdaldem adds up four elevations of some 60 m in single precision, in steps of 1.5e-5 m, and divides by eight cells
    // of 2 m: each of its six roundings is up to 0.5e-6 of a fall. The way down turns by as much the more level it is.
    expect((slopeOff * Math.PI) / 180).toBeLessThan(6e-6);
    expect(wayOff).toBeLessThan(6e-6);
  });
});
