import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { listen, openApp, siteName, textOf } from './app-page.ts';

const samples = fileURLToPath(new URL('../../data-samples/sorrel-bank', import.meta.url));

interface DroppedFile {
  readonly name: string;
  readonly text?: string;
  readonly base64?: string;
  /** A file of so many zero bytes. */
  readonly zeros?: number;
}

/** Lets a file fall on the page, as a hand does. */
async function drop(page: Page, file: DroppedFile): Promise<void> {
  await page.evaluate(({ name, text, base64, zeros }) => {
    const content: BlobPart =
      text ??
      (base64 !== undefined
        ? Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
        : new Uint8Array(zeros ?? 0));
    const carried = new DataTransfer();
    carried.items.add(new File([content], name));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  }, file);
}

const site = (features: unknown[]) =>
  JSON.stringify({
    type: 'FeatureCollection',
    site: { formatVersion: 1, name: 'Wrong Site', timeZone: 'America/Halifax', baseYear: 2027 },
    features,
  });
const tree = (properties: Record<string, unknown>, coordinates = [-64.5, 45.1]) =>
  site([
    {
      type: 'Feature',
      id: 't1',
      geometry: { type: 'Point', coordinates },
      properties: { kind: 'tree', ...properties },
    },
  ]);
const BOW_TIE = [
  [-64.5, 45.1],
  [-64.499, 45.101],
  [-64.499, 45.1],
  [-64.5, 45.101],
  [-64.5, 45.1],
];

const CASES: { what: string; file: DroppedFile; said: RegExp }[] = [
  {
    what: 'an empty file',
    file: { name: 'empty.site.geojson', text: '' },
    said: /empty\.site\.geojson.*empty/,
  },
  {
    what: 'JSON that is not GeoJSON',
    file: { name: 'plain.json', text: '{"a": 1}' },
    said: /plain\.json.*not GeoJSON/,
  },
  {
    what: 'half a site file',
    file: { name: 'cut.site.geojson', text: tree({}).slice(0, 120) },
    said: /cut\.site\.geojson.*cut short/,
  },
  {
    what: 'a negative height',
    file: { name: 'low.site.geojson', text: tree({ heightM: -3 }) },
    said: /"t1".*heightM is -3/,
  },
  {
    what: 'a crown base above its top',
    file: { name: 'base.site.geojson', text: tree({ status: 'existing', heightM: 4, crownBaseM: 5 }) },
    said: /"t1".*crownBaseM is 5/,
  },
  {
    what: 'a latitude of 95',
    file: { name: 'north.site.geojson', text: tree({}, [-64.5, 95]) },
    said: /"t1".*95.*latitude/,
  },
  {
    what: 'a boundary that crosses itself',
    file: {
      name: 'bow.site.geojson',
      text: site([
        {
          type: 'Feature',
          id: 'f1',
          geometry: { type: 'Polygon', coordinates: [BOW_TIE] },
          properties: { kind: 'field' },
        },
      ]),
    },
    said: /"f1".*crosses itself/,
  },
  { what: 'a file of 200 MB', file: { name: 'huge.tif', zeros: 200e6 }, said: /huge\.tif.*MB/ },
  {
    what: 'words that call themselves a raster',
    file: { name: 'words.tif', text: 'these are words' },
    said: /words\.tif/,
  },
  {
    what: 'half a raster',
    file: {
      name: 'cut.tif',
      base64: readFileSync(join(samples, 'sorrel-bank-ground.tif')).subarray(0, 3000).toString('base64'),
    },
    said: /cut\.tif/,
  },
  {
    what: 'words that call themselves weather',
    file: { name: 'words.epw', text: 'these are words' },
    said: /words\.epw/,
  },
  {
    what: 'a kind of file that nobody knows',
    file: { name: 'letter.docx', text: 'Dear' },
    said: /letter\.docx/,
  },
];

test('wrong files are answered with one sentence each, and the site stays as it was', async ({ page }) => {
  const heard = listen(page);
  await openApp(page);
  await expect(siteName(page)).toHaveValue('Sorrel Bank');
  const undo = page.getByRole('button', { name: /^Undo/ });
  const panel = page.getByRole('complementary', { name: 'Panel' });
  const said = page.locator('.said p');
  for (const { what, file, said: expected } of CASES) {
    await drop(page, file);
    await expect(said, what).toHaveText(expected);
    const sentence = await textOf(said);
    // One sentence: one full stop at its end (those inside are followed by no space).
    expect(sentence.split(/[.!?]\s+/), what).toHaveLength(1);
    await expect(siteName(page), what).toHaveValue('Sorrel Bank');
    await expect(undo, what).toBeDisabled();
    await expect(panel, what).toBeVisible();
    await page.getByRole('button', { name: 'Put away' }).click();
  }
  // Nothing was lost: the site is still there after a reload.
  await page.reload();
  await expect(siteName(page)).toHaveValue('Sorrel Bank');
  await expect(panel).not.toContainText('Not worked out');
  expect(heard).toEqual([]);
});

test('a species that no catalogue has is named, and the site opens all the same', async ({ page }) => {
  await openApp(page);
  await drop(page, {
    name: 'odd.site.geojson',
    text: tree({ species: 'Malus domesticca', plantedYear: 2027 }),
  });
  await expect(siteName(page)).toHaveValue('Wrong Site');
  await page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name: 'Ground' }).click();
  await expect(page.getByRole('complementary', { name: 'Panel' })).toContainText('Malus domesticca');
});
