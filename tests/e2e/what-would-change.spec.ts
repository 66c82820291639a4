import { expect, test } from '@playwright/test';
import { listen, mapOf, openApp, readOut } from './app-page.ts';

test('the map says what would change it most and is drawn at each end, by keys alone', async ({ page }) => {
  const heard = listen(page);
  await page.setViewportSize({ width: 1440, height: 900 });
  await openApp(page);
  const legend = page.getByTestId('legend');
  await expect(legend).toContainText(/If (crowns|everything|foliage) .*: \d+ % darker\./);
  const ends = legend.getByLabel('Draw it with');
  await expect(ends.locator('option')).toHaveCount(7);
  await expect(ends.locator('option').nth(1)).toHaveText(/: [−+]\d+ %$/);
  await ends.focus();
  await page.keyboard.press('ArrowDown');
  await expect(page.getByTestId('supposed')).toContainText('Drawn with');
  await expect(page.getByText(/^Working out the light/)).toHaveCount(0);
  const back = page.getByRole('button', { name: 'As expected' });
  await back.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('supposed')).toHaveCount(0);
  expect(heard).toEqual([]);
});

test('lines at chosen values, limits of the bands, and the day’s first sun, by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await page.setViewportSize({ width: 1440, height: 900 });
  await openApp(page);
  const legend = page.getByTestId('legend');
  await expect(legend).toContainText('40 %, the light to keep');
  const line = page.getByLabel('A line at');
  await line.focus();
  await page.keyboard.type('60');
  await page.keyboard.press('Enter');
  await expect(legend).toContainText('60 % of open light');
  await page.keyboard.type('160');
  await page.keyboard.press('Enter');
  await expect(page.getByText('160 % is no line of this map')).toBeVisible();
  await page.getByRole('button', { name: 'Take away: 60 % of open light' }).focus();
  await page.keyboard.press('Enter');
  await expect(legend).not.toContainText('60 % of open light');

  await page.getByText('Where the bands begin').focus();
  await page.keyboard.press('Enter');
  const lightShade = page.getByLabel('Light shade');
  await lightShade.fill('20');
  await lightShade.press('Enter');
  await expect(page.getByRole('alert')).toContainText('expected more than 30 %, where half shade begins');
  await lightShade.fill('45');
  await lightShade.press('Enter');
  await expect(legend).toContainText('45–68 %');
  await page.getByRole('button', { name: 'The usual bands' }).focus();
  await page.keyboard.press('Enter');
  await expect(legend).toContainText('50–68 %');

  await page.getByRole('radio', { name: 'Light', exact: true }).focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('radio', { name: 'First sun' })).toBeChecked();
  await expect(legend).toContainText('First sun of the day');
  await expect(legend).toContainText('15 June, year 20, half of its beam or more');
  // The cross comes out in the middle of what is shown: of the field that is taken.
  await page.getByRole('button', { name: 'Field', exact: true }).press('Enter');
  await mapOf(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect(readOut(page)).toContainText('Sun, 15 June');
  await expect(readOut(page)).toContainText(/\d\d:\d\d to \d\d:\d\d, \d+\.\d h/);
  expect(heard).toEqual([]);
});
