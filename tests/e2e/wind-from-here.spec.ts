import { expect, test } from '@playwright/test';
import { crossInTheMiddle, listen, mapOf, openApp, openStep, readOut, textOf } from './app-page.ts';

test('the wind from the cross by keys alone: it agrees with the map, names the belts, and gives the focus back', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Shelter');
  await crossInTheMiddle(page);
  await expect(readOut(page)).toContainText('Wind');
  await expect(page.getByText(/^Working out the shelter/)).toHaveCount(0);
  const cut = Number(/Windcut by (\d+) %/.exec(await textOf(readOut(page)))![1]);
  await page.keyboard.press('w');
  const dialog = page.getByRole('dialog', { name: 'Wind from here' });
  await expect(dialog).toContainText('is the wind here in the growing season');
  const here = Number(/Cut by (\d+) %/.exec(await textOf(dialog))![1]);
  // The map's cell is a metre or two wide, the spot is a point in it.
  expect(Math.abs(here - cut)).toBeLessThanOrEqual(4);
  await expect(
    dialog.getByRole('img', { name: /^The wind in the growing season: most wind comes from/ }),
  ).toBeVisible();
  await expect(dialog.getByRole('table', { name: 'If it alone were gone' })).toContainText(
    'owner: the neighbour',
  );
  await expect(dialog.getByRole('table', { name: /^From each direction/ })).toContainText('heights');
  await expect(dialog).toContainText('grass gives off');

  // By keys: from Close to the season, and another one.
  await page.keyboard.press('Tab');
  await expect(dialog.getByLabel('Season', { exact: true })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(dialog).toContainText('in the rest of the year');

  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(mapOf(page)).toBeFocused();
  expect(heard).toEqual([]);
});
