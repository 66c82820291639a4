import { expect, type Page, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';

/** Goes to what has this name and presses Enter on it, without the mouse. */
async function enter(page: Page, role: 'button' | 'group', name: string | RegExp): Promise<void> {
  await page.getByRole(role, { name }).first().focus();
  await page.keyboard.press('Enter');
}
/** Unfolds what is folded under a title. */
async function unfold(page: Page, title: string | RegExp): Promise<void> {
  await page.locator('summary', { hasText: title }).focus();
  await page.keyboard.press('Enter');
}

test('a belt’s faults, the field without a borrowed edge, its latest insurance and the bridge of a planned one, by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Shelter');
  await unfold(page, /^What is wrong with the belts/);
  await enter(page, 'button', 'Spruces on the west edge');
  const panel = page.getByTestId('properties');
  await expect(panel).toContainText('Too dense; too short; a gap; a raised foot; one species only');
  await unfold(page, 'In numbers, and what would cure it');
  await expect(panel).toContainText('for crops and soil 40 % to 60 % is wanted');
  await expect(panel).toContainText('trained person');

  await enter(page, 'button', 'Show without it');
  const banner = page.getByTestId('felled');
  await expect(banner).toContainText('without Spruces on the west edge');
  await page.getByLabel('Looked at as felled in year').fill('30');
  await page.keyboard.press('Enter');
  await expect(banner).toContainText('felled in year 30 (2057), still standing in year 20');

  await unfold(page, 'If it is felled: the latest year to plant');
  await page.getByLabel('Keep the wind cut by').fill('60');
  await page.keyboard.press('Enter');
  await enter(page, 'button', 'Find the latest year to plant');
  await expect(panel).toContainText(/To keep 60 %, plant at usual growth/, { timeout: 60_000 });
  await banner.getByRole('button', { name: 'As it stands' }).focus();
  await page.keyboard.press('Enter');
  await expect(banner).toHaveCount(0);

  await enter(page, 'button', 'Back to Shelter');
  await unfold(page, /planned belts protect/);
  await enter(page, 'button', 'Inner alder belt');
  await expect(panel).toContainText(/Year \d+ to \d+/, { timeout: 60_000 });
  await enter(page, 'button', 'What bridges the first years?');
  await expect(panel).toContainText(/A net 3\.0 m tall, half open/, { timeout: 60_000 });
  await enter(page, 'button', 'Add the net');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  expect(heard).toEqual([]);
});
