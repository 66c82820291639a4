import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

/** Goes to a button of this name and presses Enter on it, without the mouse. */
async function enter(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name }).first().focus();
  await page.keyboard.press('Enter');
}

/** The ground width of a small plan, as its scale bar says, and where it looks. */
const scaleOf = (page: Page, plan: string) =>
  page.getByRole('region', { name: plan }).getByTestId('scale-bar').getAttribute('aria-label');

test('shelter first beside everything at once: the answer, two plans that move together, what differs; by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await enter(page, /^Layouts$/);
  const list = page.getByRole('dialog', { name: 'Layouts' });
  await expect(list).toContainText('2 layouts');
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(list)).toEqual([]);
  await enter(page, 'Two side by side');

  const dialog = page.getByRole('dialog', { name: 'Two layouts' });
  await expect(dialog.locator('.answer')).toContainText(/Everything at once bears .* sooner/, {
    timeout: 60_000,
  });
  await expect(dialog.locator('.answer')).toContainText('Half of Upper Lea is in shelter from year');
  const table = page.getByTestId('what-differs');
  await expect(table).toContainText('20 things are in both and not the same (planted in).');
  await expect(table.getByRole('row', { name: /^Trees planted, first/ })).toContainText('2033');
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(dialog)).toEqual([]);

  // The two plans go together, by the keys of either.
  const plans = ['Plan of Shelter first', 'Plan of Everything at once'];
  await page.getByTestId('plan-0').focus();
  const before = await scaleOf(page, plans[1]);
  await page.keyboard.press('+');
  await page.keyboard.press('+');
  await expect.poll(() => scaleOf(page, plans[0])).not.toBe(before);
  await expect
    .poll(async () => (await scaleOf(page, plans[1])) === (await scaleOf(page, plans[0])))
    .toBe(true);
  await page.getByTestId('plan-1').focus();
  await page.keyboard.press('Home');
  await expect.poll(() => scaleOf(page, plans[0])).toBe(before);

  // So do their years.
  const years = dialog.getByRole('slider');
  await years.focus();
  for (let year = 20; year > 10; year--) await page.keyboard.press('ArrowLeft');
  await expect(dialog.locator('.pair-year')).toContainText('Year 10 after planting · 2037');
  await expect(table.getByRole('row', { name: /, year 10/ }).first()).toBeAttached({
    timeout: 60_000,
  });

  // Prices are the person's: none before they are typed.
  await expect(dialog).toContainText('No cost is made up');
  await dialog.getByLabel('A tree', { exact: true }).fill('30');
  await dialog.getByLabel('A metre of belt').fill('4');
  await dialog.getByLabel('Currency').fill('CAD');
  await page.keyboard.press('Tab');
  await expect(dialog).not.toContainText('No cost is made up');
  await page.locator('summary', { hasText: 'The same in both' }).click();
  await expect(table).toContainText('Cost in all');

  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  expect(heard).toEqual([]);
});

test('a layout is copied, named, drawn in and deleted; what is common is parted; all of it undone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await enter(page, /^Layouts$/);
  await enter(page, 'Copy Shelter first');
  const list = page.getByRole('dialog', { name: 'Layouts' });
  await expect(list).toContainText('On the map is “Shelter first, changed”');
  const name = list.getByLabel('Name').last();
  await name.fill('Nuts only');
  await name.press('Enter');
  await expect(list).toContainText('On the map is “Nuts only”');
  await page.keyboard.press('Escape');
  await expect(page.getByLabel('Layout on the map')).toHaveValue('Nuts only');

  // What is drawn now is that layout's own.
  await openStep(page, 'Tall trees');
  await enter(page, /^A tree$/);
  await page.getByTestId('map-canvas').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');

  // What is common says so, and can be parted.
  await openStep(page, 'Shelter');
  await enter(page, 'North alder belt');
  await expect(page.getByTestId('common-thing')).toContainText(
    'North alder belt is common to all 3 layouts: what you change here changes in all.',
  );
  await enter(page, 'Only in “Nuts only”');
  await expect(page.getByTestId('common-thing')).toHaveCount(0);
  await expect(page.getByTestId('properties')).toContainText('Only in layout “Nuts only”.');

  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).click();
  const saved = JSON.parse(readFileSync(await (await downloading).path(), 'utf8'));
  const own = (kind: string) =>
    saved.features.filter(
      ({ properties }: { properties: { kind: string; layout?: string } }) =>
        properties.kind === kind && properties.layout === 'Nuts only',
    ).length;
  expect([own('tree'), own('belt')]).toEqual([21, 3]);
  expect(saved.site.layouts.map((layout: { name: string }) => layout.name)).toEqual([
    'Shelter first',
    'Everything at once',
    'Nuts only',
  ]);

  await enter(page, /^Layouts$/);
  await enter(page, 'Delete Nuts only');
  await expect(list).toContainText('On the map is what is common to all.');
  await page.keyboard.press('Escape');
  for (let step = 0; step < 5; step++) await enter(page, /^Undo/);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  expect(heard).toEqual([]);
});

test('where nothing is a layout yet, two are started from what is planned, in one step', async ({ page }) => {
  await openApp(page);
  await page.locator('summary', { hasText: 'More' }).press('Enter');
  await page.getByRole('button', { name: 'Open Kestrel Flat, in the south' }).press('Enter');
  await expect(page.getByLabel('Name of the site')).toHaveValue('Kestrel Flat');
  await enter(page, /^Layouts$/);
  const list = page.getByRole('dialog', { name: 'Layouts' });
  await expect(list).toContainText('No layouts');
  await enter(page, 'Start two layouts');
  await expect(list).toContainText('2 layouts');
  await expect(list.getByLabel('Name')).toHaveCount(2);
  await page.keyboard.press('Escape');
  await enter(page, /^Undo/);
  await enter(page, /^Layouts$/);
  await expect(list).toContainText('No layouts');
});

for (const viewport of [
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
])
  test(`two layouts at ${viewport.width} × ${viewport.height}: nothing sticks out, all can be touched`, async ({
    page,
  }) => {
    const heard = listen(page);
    await page.setViewportSize(viewport);
    await openApp(page);
    if (viewport.width < 641) await page.locator('summary', { hasText: 'More' }).click();
    await page.getByRole('button', { name: 'Layouts', exact: true }).filter({ visible: true }).click();
    await page.getByRole('button', { name: 'Two side by side' }).click();
    const dialog = page.getByRole('dialog', { name: 'Two layouts' });
    await expect(page.getByTestId('what-differs')).toBeVisible({ timeout: 60_000 });
    expect(await tooLow(dialog)).toEqual([]);
    const body = dialog.locator('.body');
    expect(await body.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(
      1,
    );
    const [left, right] = await Promise.all(
      [0, 1].map(async (side) => (await page.getByTestId(`plan-${side}`).boundingBox())!),
    );
    // Side by side where there is room, one under the other on a phone.
    if (viewport.width < 641) expect(right.y).toBeGreaterThanOrEqual(left.y + left.height);
    else expect(right.x).toBeGreaterThanOrEqual(left.x + left.width);
    expect(await seriousFaults(page)).toEqual([]);
    expect(heard).toEqual([]);
  });
