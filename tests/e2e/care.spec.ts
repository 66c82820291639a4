import { expect, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

test('care of a row of trees is added, changed, undone and taken away by keys alone, and follows the year', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Tall trees');
  const choose = async (tag: string) => {
    await page.locator('table.trees').getByRole('button', { name: tag, exact: true }).focus();
    await page.keyboard.press('Enter');
  };
  await choose('A1');
  const care = page.getByRole('region', { name: 'Care' });
  await expect(care).toContainText('Nothing is planned');

  // The form has the focus, and says at once what it would do.
  await care.getByRole('button', { name: 'Add care' }).press('Enter');
  await expect(care.getByLabel('What is done')).toBeFocused();
  await care.getByLabel('What is done').selectOption('coppice');
  await care.getByLabel('In the year').fill('2036');
  await page.keyboard.press('Tab');
  await expect(care).toContainText(/In year 20 it is [\d.]+ m tall \([\d.]+ m to [\d.]+ m\) instead of/);
  await expect(care).toContainText('never alone');
  await expect(care.getByLabel('Height of the head')).toHaveCount(0);
  await care.getByLabel('Care of').selectOption('row');
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(care)).toEqual([]);
  await care.getByRole('button', { name: 'Add it for all 3' }).press('Enter');
  await expect(care.getByRole('listitem')).toContainText('Coppice in 2036, then every 7 years');
  await expect(care.getByRole('button', { name: 'Add care' })).toBeFocused();

  // One step for all three.
  await page.getByRole('button', { name: 'Back to Tall trees' }).press('Enter');
  await choose('A3');
  await expect(care.getByRole('listitem')).toContainText('Coppice in 2036');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(care).toContainText('Nothing is planned');
  await page.getByRole('button', { name: /^Redo/ }).press('Enter');

  await care.getByRole('button', { name: 'Change: Coppice in 2036, then every 7 years' }).press('Enter');
  await care.getByLabel('Again every').fill('');
  await page.keyboard.press('Tab');
  await care.getByRole('button', { name: 'Change it' }).press('Enter');
  await expect(care.getByRole('listitem')).toContainText('Coppice in 2036');
  await expect(care.getByRole('listitem')).not.toContainText('every');
  await care.getByRole('button', { name: /^Take away/ }).press('Enter');
  await expect(care.getByRole('listitem')).toHaveCount(0);

  // What follows it is called by its own name in its years.
  await care.getByRole('button', { name: 'Add care' }).press('Enter');
  await care.getByLabel('What is done').selectOption('replace');
  await care.getByLabel('In the year').fill('2040');
  await page.keyboard.press('Tab');
  await care.getByRole('button', { name: /^Planted in its place/ }).press('Enter');
  await page.keyboard.type('hazel');
  await page.keyboard.press('Enter');
  await care.getByRole('button', { name: 'Add it' }).press('Enter');
  await expect(page.getByTestId('properties')).toContainText('In its place in year 20');
  await page.getByRole('button', { name: 'Back to Tall trees' }).press('Enter');
  const row = page.locator('table.trees tr', { has: page.getByRole('button', { name: 'A3', exact: true }) });
  await expect(row).toContainText('follows Italian alder');
  expect(heard).toEqual([]);
});

test('what ends a conifer says so, on a belt', async ({ page }) => {
  await openApp(page);
  await openStep(page, 'Shelter');
  await page.locator('summary', { hasText: /^What is wrong with the belts/ }).press('Enter');
  await page.getByRole('button', { name: 'Spruces on the west edge' }).first().press('Enter');
  const care = page.getByRole('region', { name: 'Care' });
  await care.getByRole('button', { name: 'Add care' }).press('Enter');
  await care.getByLabel('What is done').selectOption('coppice');
  await expect(care).toContainText('does not shoot again when its whole crown is taken');
  await expect(care).toContainText('its place is empty');
});
