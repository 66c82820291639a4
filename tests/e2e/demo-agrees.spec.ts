import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { fromArrayBuffer } from 'geotiff';
import { type LonLat, toLocal } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import { cellAt } from '../../src/numeric/grid.ts';
import { siteGrid } from '../../src/scene/site-grid.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { passCellsM } from '../../src/state/cell-size.ts';
import {
  answered,
  crossInTheMiddle,
  listen,
  mapOf,
  openApp,
  openStep,
  press,
  readOut,
  step,
  textOf,
} from './app-page.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const DEMO = 'data-samples/sorrel-bank/sorrel-bank.site.geojson';
const YEAR = 20;
/** East and north of the first point, metres: the five points that are compared. */
const STEPS = [
  [0, 0],
  [-43, 12],
  [31, -37],
  [64, 58],
  [-85, -21],
] as const;

async function bandOf(path: string, band: number): Promise<Float32Array> {
  const bytes = new Uint8Array(readFileSync(path));
  const image = await (await fromArrayBuffer(bytes.buffer)).getImage();
  return ((await image.readRasters({ samples: [band] })) as unknown as Float32Array[])[0];
}

function commandLine(command: string, cellM: number, layout: string | null, out: string): void {
  const { status, stderr } = spawnSync(
    process.execPath,
    [
      ...['.tools/leeglade.mjs', command, DEMO, '--quiet'],
      ...['--year', String(YEAR), '--cell', String(cellM), '--out', out],
      ...(layout === null ? [] : ['--layout', layout]),
    ],
    { cwd: root, encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  expect(status).toBe(0);
}

test('the read-out of the demo says what the command line writes, at five points', async ({ page }, info) => {
  const heard = listen(page);
  const { document } = parseSite(readFileSync(join(root, DEMO), 'utf8'), DEMO);
  const layout = null;
  const frame = siteFrame(document);
  // The app's own choice of cells for all fields of this site.
  const cellM = passCellsM(siteGrid(document, frame, { cellM: 5, layout }), null).at(-1)!;
  const grid = siteGrid(document, frame, { cellM, layout });
  const out = info.outputPath('command-line');
  commandLine('light', cellM, layout, out);
  const lightShare = await bandOf(join(out, 'light-share.tif'), 12);
  commandLine('shelter', cellM, layout, out);
  const windShare = await bandOf(join(out, 'wind-share.tif'), 0);

  await openApp(page);
  await openStep(page, 'Ground');
  await page.getByRole('complementary', { name: 'Panel' }).getByText('Light', { exact: true }).click();
  await crossInTheMiddle(page);
  await answered(page);
  const read: { light: number; wind: number }[] = [];
  for (const [eastM, northM] of STEPS) {
    await step(page, eastM, northM);
    await answered(page);
    const text = await textOf(readOut(page));
    const light = /Light\s*(\d+) %/.exec(text);
    const wind = /Wind\s*(open|stronger by|cut by) ?(\d*)/.exec(text);
    expect(light, text).not.toBeNull();
    expect(wind, text).not.toBeNull();
    const percent = Number(wind![2] || 0);
    read.push({ light: Number(light![1]), wind: wind![1] === 'stronger by' ? -percent : percent });
    await step(page, -eastM, -northM);
  }

  // Where the cross was: a tree drawn there, in the file as it is saved.
  await openStep(page, 'Tall trees');
  await page.getByRole('button', { name: 'A tree', exact: true }).click();
  await mapOf(page).focus();
  await press(page, 'Enter');
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const saved = JSON.parse(readFileSync(await (await downloading).path(), 'utf8'));
  const [lon, lat] = saved.features.at(-1).geometry.coordinates;

  STEPS.forEach(([eastM, northM], i) => {
    // The cross moves along the map: first to the east, then to the north.
    const place: LonLat = destination(destination([lon, lat], 90, eastM), 0, northM);
    const [x, y] = toLocal(frame, place);
    const cell = cellAt(grid, x, y);
    expect(cell).toBeGreaterThanOrEqual(0);
    expect(read[i].light).toBe(Math.round(lightShare[cell] * 100));
    expect(read[i].wind).toBe(Math.round((1 - windShare[cell]) * 100));
  });
  // Five different places, not five times the same answer.
  expect(new Set(read.map(({ light, wind }) => `${light} ${wind}`)).size).toBeGreaterThan(1);
  expect(heard).toEqual([]);
});
