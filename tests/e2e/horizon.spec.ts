import { expect, test } from '@playwright/test';
import {
  answered,
  crossInTheMiddle,
  listen,
  mapOf,
  openApp,
  openStep,
  press,
  readOut,
  textOf,
} from './app-page.ts';
import { savePdf } from './page-checks.ts';

test('the horizon from the cross by keys alone: it agrees with the map, closes with Escape, and gives the focus back', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Light');
  await crossInTheMiddle(page);
  // Away from the rim of an alder's shade, where the sun changes by more within a cell of the map than is held here.
  await press(page, 'ArrowUp', 3);
  await answered(page);
  const sunADay = Number(/Direct sun([\d.]+) h a day/.exec(await textOf(readOut(page)))![1]);
  await page.keyboard.press('h');
  const dialog = page.getByRole('dialog', { name: 'Horizon from here' });
  await expect(dialog).toContainText('possible hours of sun reach the spot');
  const [, got, open] = /([\d,]+) of ([\d,]+) possible hours/
    .exec(await textOf(dialog))!
    .map((figure) => Number(figure.replaceAll(',', '')));
  // The map's own error is 1 % of open hours, and its cell is half a metre wide.
  expect(Math.abs(got / 183 - sunADay)).toBeLessThan((0.02 * open) / 183);
  await expect(dialog.getByRole('table').first()).toContainText('Sun that reaches the spot');
  await expect(dialog).toContainText('Never look at the sun');

  // Another period is another figure, and the app's own.
  await dialog.getByLabel('Period').selectOption('year');
  await expect(dialog).toContainText('the whole year');
  await dialog.getByText('The same in words').press('Enter');
  await expect(dialog.getByRole('listitem').filter({ hasText: 'The sun on' }).first()).toBeVisible();

  await dialog.getByRole('button', { name: 'On paper' }).press('Enter');
  const paper = page.getByRole('dialog', { name: 'Horizon on paper' });
  await expect(paper.locator('svg[width="297mm"][height="210mm"]')).toBeVisible();
  await savePdf(page, paper, 'sorrel-bank-horizon.pdf');

  await page.keyboard.press('Escape');
  await expect(dialog).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(mapOf(page)).toBeFocused();
  expect(heard).toEqual([]);
});

test('a press on the map holds the read-out, so that its button can be reached with the mouse', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  const box = (await mapOf(page).boundingBox())!;
  const spot = { x: box.x + box.width * 0.4, y: box.y + box.height * 0.4 };
  await page.mouse.move(spot.x, spot.y);
  await expect(readOut(page)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Horizon from here' })).toHaveCount(0);
  await page.mouse.click(spot.x, spot.y);
  await page.getByRole('button', { name: 'Horizon from here' }).click();
  await expect(page.getByRole('dialog', { name: 'Horizon from here' })).toContainText('takes');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(heard).toEqual([]);
});
