import { expect, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

test('a winter’s cuts are looked for, all accepted, shown among the care, and undone, by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Light');
  const section = page.locator('section.section', { hasText: 'winter’s cut' }).first();
  await section.getByRole('button', { name: /cut/i }).first().press('Enter');
  const list = section.getByRole('list', { name: 'Proposed cuts' });
  await expect(list).toBeVisible({ timeout: 300_000 });
  expect(await list.getByRole('listitem').count()).toBeGreaterThan(0);
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(section)).toEqual([]);

  await section.getByRole('button', { name: /^Accept all/ }).press('Enter');
  await expect(list.getByText('Planned, among its care.').first()).toBeVisible();
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toBeEnabled();
  await undo.press('Enter');
  await expect(section).toContainText('The site has changed since');
  await expect(list.getByText('Planned, among its care.')).toHaveCount(0);
  expect(heard).toEqual([]);
});
