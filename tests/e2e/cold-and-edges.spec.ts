import { expect, type Page, test } from '@playwright/test';
import { crossInTheMiddle, listen, openApp, openStep, readOut } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

/** Unfolds what is folded under a title, by keys. */
async function unfold(page: Page, title: string | RegExp): Promise<void> {
  await page.locator('summary', { hasText: title }).focus();
  await page.keyboard.press('Enter');
}

test('cold air on the map, in the read-out and in words; frosts of the file’s year, by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Ground');
  await unfold(page, 'Where cold air lies');
  const fields = page.locator('.cold-fields li');
  await expect(fields.first()).toContainText('Withy Bottom holds the most cold air: ');
  await page.getByRole('button', { name: 'Show it on the map' }).focus();
  await page.keyboard.press('Enter');
  const legend = page.getByTestId('legend');
  await expect(legend).toContainText('Cold air, how deep it would lie');
  await expect(legend).toContainText('where it runs together');
  await unfold(page, 'Frosts and heat');
  await expect(page.getByText(/^Last spring frost: /)).toBeVisible();
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(page.locator('.panel'))).toEqual([]);
  await crossInTheMiddle(page);
  await expect(readOut(page)).toContainText('Cold air');
  expect(heard).toEqual([]);
});

test('what lies beside an edge is asked for, drawn, said and put away by keys alone', async ({ page }) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Shelter');
  await unfold(page, /^What is wrong with the belts/);
  await page.getByRole('button', { name: 'Spruces on the west edge' }).first().focus();
  await page.keyboard.press('Enter');
  const section = page.getByRole('region', { name: 'Beside this edge' });
  await section.getByRole('button', { name: 'What grows beside it?' }).focus();
  await page.keyboard.press('Enter');
  await expect(section).toContainText('Its east side, on Pound Field');
  await expect(section).toContainText(/Sun lovers: \d+ to \d+ m from it/);
  await expect(section).toContainText('Shade-tolerant plants: ');
  await section.locator('summary').focus();
  await page.keyboard.press('Enter');
  await expect(section.getByRole('table')).toContainText('wind cut');
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(section)).toEqual([]);
  await section.getByRole('button', { name: 'Put it away' }).focus();
  await page.keyboard.press('Enter');
  await expect(section.locator('figure')).toHaveCount(0);
  expect(heard).toEqual([]);
});
