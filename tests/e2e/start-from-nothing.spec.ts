import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import {
  answered,
  crossInTheMiddle,
  listen,
  mapOf,
  openApp,
  openStep,
  press,
  readOut,
  siteName,
  step,
  textOf,
} from './app-page.ts';

const YEAR = 25;

/** What a person reads off: the cell under the cross, and the light of the patch. */
async function figures(page: Page): Promise<{ cell: string; patch: string }> {
  await crossInTheMiddle(page);
  await answered(page);
  await expect(page.getByText(/^Looking ahead/)).toHaveCount(0);
  const row = page.getByRole('row').filter({ hasText: 'Patch 1' }).filter({ hasText: '%' });
  await expect(row.first()).toBeVisible();
  return {
    cell: await textOf(readOut(page)),
    patch: await textOf(row.first()),
  };
}

test('an empty site becomes a plan by keyboard alone and is the same after a reload', async ({ page }) => {
  const heard = listen(page);
  await openApp(page);

  // A place by coordinates.
  await page.locator('summary', { hasText: 'More' }).press('Enter');
  await page.getByRole('button', { name: 'New site', exact: true }).press('Enter');
  const start = page.getByRole('dialog', { name: 'Start a new site' });
  await start.getByLabel('Name of the site').fill('Test Meadow');
  await start.getByLabel('Latitude and longitude').fill('46.2, -63.1');
  await start.getByRole('button', { name: 'Start here' }).press('Enter');
  await expect(siteName(page)).toHaveValue('Test Meadow');

  // A boundary of 60 by 40 m by sides and bearings.
  await page.getByRole('button', { name: 'Type sides and bearings' }).press('Enter');
  const sides = page.getByRole('dialog', { name: 'A boundary by sides and bearings' });
  await sides.getByRole('radio', { name: 'true north' }).press('Space');
  await sides.getByLabel(/^Sides, one a line/).fill('60 90\n40 180\n60 270\n40 0');
  await expect(sides).toContainText('0.24 ha');
  await sides.getByRole('button', { name: 'Make it a field' }).press('Enter');

  // A belt along its west side.
  await openStep(page, 'Shelter');
  await page.getByRole('button', { name: 'A belt', exact: true }).press('Enter');
  await mapOf(page).focus();
  await press(page, 'Home');
  await step(page, -34, 22);
  await press(page, 'Enter');
  await step(page, 0, -44);
  await press(page, 'Enter', 2);
  await expect(page.getByTestId('properties')).toContainText('belt');

  // A patch of 16 by 10 m in the middle.
  await openStep(page, 'Light');
  await page.getByRole('button', { name: 'A patch', exact: true }).press('Enter');
  await mapOf(page).focus();
  await step(page, 26, 17);
  await press(page, 'Enter');
  await step(page, 16, 0);
  await press(page, 'Enter');
  await step(page, 0, 10);
  await press(page, 'Enter');
  await step(page, -16, 0);
  await press(page, 'Enter');
  await press(page, 'Control+Enter');
  await expect(page.getByTestId('properties')).toContainText('patch');

  // Three trees round it.
  await openStep(page, 'Tall trees');
  await page.getByRole('button', { name: 'A tree', exact: true }).press('Enter');
  await mapOf(page).focus();
  await step(page, 4, -14);
  for (let tree = 0; tree < 3; tree++) {
    await step(page, 6, 0);
    await press(page, 'Enter');
  }
  await press(page, 'Escape', 2);
  await expect(page.getByRole('complementary', { name: 'Panel' })).toContainText('3 planned');

  // The year, and what is read there.
  await openStep(page, 'Light');
  const slider = page.getByLabel('Years after planting');
  await slider.focus();
  await press(page, 'ArrowRight', YEAR - 20);
  await expect(slider).toHaveValue(String(YEAR));
  const before = await figures(page);
  expect(before.cell).toMatch(/Light\s*\d+ %/);
  expect(before.cell).toMatch(/Wind\s*(open|cut by \d+ %)/);

  // The file holds all of it.
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save file' }).press('Enter');
  const saved = JSON.parse(readFileSync(await (await downloading).path(), 'utf8'));
  const kinds = saved.features.map((feature: { properties: { kind: string } }) => feature.properties.kind);
  expect(kinds.sort()).toEqual(['belt', 'field', 'patch', 'tree', 'tree', 'tree']);
  expect(saved.site.name).toBe('Test Meadow');

  // A reload loses nothing.
  await expect(page.locator('.saved')).toContainText('Saved on this device');
  await page.reload();
  await expect(siteName(page)).toHaveValue('Test Meadow');
  await expect(page.getByLabel('Years after planting')).toHaveValue(String(YEAR));
  expect(await figures(page)).toEqual(before);
  expect(heard).toEqual([]);
});
