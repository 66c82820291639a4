import { describe, expect, it } from 'vitest';
import { writeGeoTiff } from '../../src/geo/formats/geotiff-write.ts';
import { type Frame, frameAt } from '../../src/geo/frame.ts';
import { readGround } from '../../src/geo/read-ground.ts';
import { cellCentreX, cellCentreY, type Grid } from '../../src/numeric/grid.ts';
import { fixtureBytes, textBytes } from './files.ts';
import { GROUND, surfaceM } from './fixtures/surface.ts';

const frame = frameAt([-64.5, 45.1]);
const box = {
  west: GROUND.westM + 40 - frame.originEastingM,
  east: GROUND.westM + 360 - frame.originEastingM,
  south: GROUND.northM - 360 - frame.originNorthingM,
  north: GROUND.northM - 40 - frame.originNorthingM,
};

/** Largest error over cells well away from the hole, and the number of cells without data. */
function compare(ground: Grid, at: Frame): { worstM: number; holes: number } {
  let worstM = 0;
  let holes = 0;
  for (let r = 0; r < ground.rows; r++) {
    for (let c = 0; c < ground.columns; c++) {
      const eastingM = at.originEastingM + cellCentreX(ground, c);
      const northingM = at.originNorthingM + cellCentreY(ground, r);
      const value = ground.values[r * ground.columns + c];
      const column = (eastingM - GROUND.westM) / GROUND.cellM;
      const row = (GROUND.northM - northingM) / GROUND.cellM;
      // A hole may grow by the reach of one resampling; beside it the files that were warped are themselves off,
      // because the warping drew its edge on from one side.
      const besideHole = column > 28 && column < 36 && row > 3 && row < 11;
      if (Number.isNaN(value)) {
        holes++;
        expect(besideHole).toBe(true);
      } else if (!besideHole) worstM = Math.max(worstM, Math.abs(value - surfaceM(eastingM, northingM)));
    }
  }
  return { worstM, holes };
}

describe('ground from a raster', () => {
  it.each([
    ['utm-striped-deflate-float32.tif', 0.015, /EPSG:32620, 40 × 40 cells of 10 m, covers 97 %/],
    ['utm-tiled-zstd-float32.tif', 0.015, /EPSG:32620/],
    ['utm-big-float64.tif', 0.015, /EPSG:32620/],
    ['utm-tiled-lzw-int16.tif', 0.52, /EPSG:32620/], // whole metres
    ['albers-user-float32.tif', 0.03, /Albers/],
    ['degrees-point.tif', 0.03, /EPSG:4269/],
    ['lambert-feet.tif', 0.03, /Lambert/],
  ])('lays %s where it belongs, to %f m', async (fileName, toleranceM, description) => {
    const result = await readGround({ fileName, bytes: fixtureBytes(fileName), frame, box });
    const { worstM, holes } = compare(result.ground, frame);
    expect(result.description).toMatch(description);
    expect(worstM).toBeLessThan(toleranceM);
    expect(holes).toBeGreaterThan(0);
    expect(result.ground.westM).toBeLessThanOrEqual(box.west);
    expect(result.ground.northM).toBeGreaterThanOrEqual(box.north);
  });

  it('covers the box with cells to spare for bilinear sampling', async () => {
    const fileName = 'utm-striped-deflate-float32.tif';
    const { ground } = await readGround({ fileName, bytes: fixtureBytes(fileName), frame, box });
    expect(ground.cellM).toBe(5);
    expect(ground.westM + 1.5 * ground.cellM).toBeLessThanOrEqual(box.west);
    expect(ground.westM + (ground.columns - 1.5) * ground.cellM).toBeGreaterThanOrEqual(box.east);
  });

  it('leaves what the file does not cover without data and says how much it covers', async () => {
    const fileName = 'utm-striped-deflate-float32.tif';
    const wide = { ...box, west: box.west - 400 };
    const { ground, description } = await readGround({
      fileName,
      bytes: fixtureBytes(fileName),
      frame,
      box: wide,
    });
    expect(Number.isNaN(ground.values[0])).toBe(true);
    expect(description).toMatch(/covers (4|5)\d % of the site/);
  });

  it('averages a fine raster down instead of picking single pixels', async () => {
    // A chessboard of 0 and 10 m: every coarse cell must come out near 5 m.
    const side = 1500;
    const values = new Float32Array(side * side);
    for (let i = 0; i < values.length; i++)
      values[i] = ((i % side) + Math.floor(i / side)) % 2 === 0 ? 0 : 10;
    const spec = { columns: side, rows: side, cellM: 0.25, westM: 0, northM: 0 };
    const file = writeGeoTiff([{ name: 'board', values }], spec, frame);
    const { ground } = await readGround({
      fileName: 'board.tif',
      bytes: file.buffer as ArrayBuffer,
      frame,
      box: { west: 10, east: 365, south: -365, north: -10 },
    });
    expect(ground.cellM).toBe(0.5);
    let worst = 0;
    for (const value of ground.values) worst = Math.max(worst, Math.abs(value - 5));
    expect(worst).toBeLessThan(1e-3);
  });

  it('keeps the places of an averaged slope', async () => {
    const side = 2000;
    const values = new Float32Array(side * side);
    for (let i = 0; i < values.length; i++) values[i] = 100 + (0.2 * ((i % side) + 0.5)) / 4;
    const file = writeGeoTiff(
      [{ name: 'slope', values }],
      { columns: side, rows: side, cellM: 0.25, westM: 0, northM: 0 },
      frame,
    );
    const { ground } = await readGround({
      fileName: 'slope.tif',
      bytes: file.buffer as ArrayBuffer,
      frame,
      box: { west: 10, east: 2500, south: -490, north: -10 },
    });
    const row = Math.floor(ground.rows / 2);
    for (let c = 5; c < 300; c += 37) {
      const expected = 100 + 0.2 * cellCentreX(ground, c);
      expect(ground.values[row * ground.columns + c]).toBeCloseTo(expected, 3);
    }
  });
});

describe('a raster that cannot be used gives one sentence naming the file', () => {
  const whole = fixtureBytes('utm-striped-deflate-float32.tif');
  const read = (fileName: string, bytes: ArrayBuffer, at = frame) =>
    readGround({ fileName, bytes, frame: at, box });

  it('empty', () => expect(read('a.tif', new ArrayBuffer(0))).rejects.toThrow('a.tif: the file is empty.'));
  it('no TIFF', () =>
    expect(read('a.tif', textBytes('elevation 12 13 14'))).rejects.toThrow(
      /^a\.tif: this is not a TIFF file/,
    ));
  it.each([9, 60, 300, 700, 1200])('cut short after %i bytes', (length) =>
    expect(read('a.tif', whole.slice(0, Math.min(length, whole.byteLength - 3)))).rejects.toThrow(
      /^a\.tif: the file is cut short/,
    ),
  );
  it('somewhere else', () =>
    expect(read('a.tif', whole, frameAt([10, 50]))).rejects.toThrow(/^a\.tif: the raster .* has no ground/));
  it('no georeference', async () => {
    const bytes = whole.slice(0);
    blankTags(bytes, [33550, 33922, 34735]);
    await expect(read('a.tif', bytes)).rejects.toThrow(/^a\.tif: the picture does not say where on Earth/);
  });
  it('an unknown system', async () => {
    const bytes = whole.slice(0);
    replaceShort(bytes, 32620, 20999);
    await expect(read('a.tif', bytes)).rejects.toThrow(/^a\.tif: its coordinate system \(EPSG:20999\)/);
  });
  it('damaged data', async () => {
    const bytes = whole.slice(0);
    new Uint8Array(bytes).fill(0xaa, bytes.byteLength - 700);
    await expect(read('a.tif', bytes)).rejects.toThrow(/^a\.tif: /);
  });
  it('too large, before it is read', async () => {
    const { checkFileSize } = await import('../../src/geo/formats/file-size.ts');
    expect(() => checkFileSize('a.tif', 201e6)).toThrow('a.tif: the file has 201 MB, at most 200 MB');
  });
  it('only holes under the site', async () => {
    const spec = { columns: 40, rows: 40, cellM: 10, westM: box.west - 40, northM: box.north + 40 };
    const file = writeGeoTiff(
      [{ name: 'nothing', values: new Float32Array(1600).fill(Number.NaN) }],
      spec,
      frame,
    );
    await expect(read('a.tif', file.buffer as ArrayBuffer)).rejects.toThrow(
      /has no ground where the site lies/,
    );
  });
});

/** Renames tags in the first directory of a little-endian file to ones that nobody reads. */
function blankTags(bytes: ArrayBuffer, codes: number[]): void {
  const view = new DataView(bytes);
  const start = view.getUint32(4, true);
  for (let i = 0; i < view.getUint16(start, true); i++) {
    const at = start + 2 + 12 * i;
    if (codes.includes(view.getUint16(at, true))) view.setUint16(at, 65000 + i, true);
  }
}

function replaceShort(bytes: ArrayBuffer, from: number, to: number): void {
  const view = new DataView(bytes);
  for (let at = 0; at + 1 < 1000; at++) if (view.getUint16(at, true) === from) view.setUint16(at, to, true);
}
