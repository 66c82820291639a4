import { expect, test } from '@playwright/test';
import { listen, openApp, openStep, textOf } from './app-page.ts';

test('belts are proposed, one is refused, one accepted and one undone, by keys alone', async ({ page }) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Shelter');
  const section = page.locator('section.section', { hasText: 'Propose belts' });
  await section.getByLabel('For').focus();
  await page.keyboard.type('Withy');
  await expect(section.getByLabel('For').locator('option:checked')).toHaveText('Withy Bottom');
  await page.keyboard.press('Tab');
  await page.keyboard.type('45');
  await page.keyboard.press('Tab');
  await page.keyboard.type('60');
  await page.keyboard.press('Tab');
  await page.keyboard.type('10');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(section.getByRole('button', { name: 'Propose belts' })).toBeFocused();
  await page.keyboard.press('Enter');

  const list = section.getByRole('list', { name: 'Proposed belts' });
  await expect(list).toBeVisible({ timeout: 240_000 });
  expect(await textOf(section)).toMatch(
    /found to have the wind cut by 45\s% or more over 60\s% of Withy Bottom in year 10/,
  );
  await expect(section).toContainText('slow to fast growth');

  // From the list's first button on by Tab: accept the first belt, then take it back.
  await section.getByRole('button', { name: 'Accept A', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(list.getByText(/^Planned: choose it on the map/)).toHaveCount(1);
  const undo = page.getByRole('button', { name: 'Undo' });
  await expect(undo).toBeEnabled();
  await undo.focus();
  await page.keyboard.press('Enter');
  await expect(section).toContainText('The site has changed since');

  const again = section.getByRole('button', { name: 'Propose again' });
  await again.focus();
  await page.keyboard.press('Enter');
  await expect(list.getByText(/^Planned: choose it on the map/)).toHaveCount(0);
  await expect(list).toBeVisible({ timeout: 240_000 });
  await section.getByRole('button', { name: 'Not this one: A' }).focus();
  await page.keyboard.press('Enter');
  await expect(list.getByText('Refused.')).toHaveCount(1);
  await expect(section).toContainText('Without what was refused these figures no longer hold.');
  expect(heard).toEqual([]);
});
