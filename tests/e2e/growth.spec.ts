import { expect, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

test('how fast things grow here, by keys alone: misses shown, a height taken, the vigour taken over, undone', async ({
  page,
}) => {
  const heard = listen(page);
  await page.setViewportSize({ width: 820, height: 1180 });
  await openApp(page);
  await openStep(page, 'Tall trees');
  await page.getByRole('button', { name: 'Growth curves and measured heights' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'How fast do things grow here?' });
  await expect(dialog).toContainText('5 heights of 4 plants say that things grow to 0.88 times the size');
  const birch = dialog.getByRole('row', { name: /^paper birch T2 .*2021-10-09/ });
  await expect(birch).toContainText('6.1 m');
  await expect(birch).toContainText('−15 %');
  await expect(dialog.getByText('Where these figures come from')).toBeVisible();

  // Another height, of the rowan, read with a rod.
  await dialog.getByRole('button', { name: 'Measure a tree or belt' }).press('Enter');
  const height = page.getByRole('dialog', { name: 'How tall is a tree?' });
  await height.getByLabel('a rod').press('Space');
  await height.getByLabel('Day', { exact: true }).fill('2027-10-12');
  await height.getByLabel('Height, read on the rod').fill('6.3');
  await height.getByLabel('Height, read on the rod').press('Enter');
  await height.getByLabel('Whose height is it?').selectOption({ label: 'rowan F3' });
  await height.getByRole('button', { name: 'Give it this height' }).press('Enter');
  await page.getByRole('button', { name: 'Growth curves and measured heights' }).press('Enter');
  await expect(dialog).toContainText('6 heights of 4 plants');
  await expect(dialog.getByRole('row', { name: /^rowan F3 .*2027-10-12, by a rod/ })).toContainText('6.3 m');

  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(dialog)).toEqual([]);

  const percent = dialog.getByLabel('Things grow here to');
  await expect(percent).toHaveValue('100');
  await dialog.getByRole('button', { name: 'Reckon with what the heights say' }).press('Enter');
  await expect(percent).not.toHaveValue('100');
  await expect(dialog).toContainText('the site has what they say already');
  await dialog.getByRole('button', { name: 'Close' }).press('Enter');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await page.getByRole('button', { name: 'Growth curves and measured heights' }).press('Enter');
  await expect(percent).toHaveValue('100');

  // A dwarfing stock, in feet, by hand.
  await dialog.getByRole('button', { name: /How it grows: species/ }).press('Enter');
  await dialog.getByLabel('Search: How it grows: species').fill('apple');
  await dialog.getByLabel('Search: How it grows: species').press('Enter');
  const full = dialog.getByRole('row', { name: /^40 / });
  await expect(full).toContainText('9.9 m');
  await dialog.getByLabel('On the rootstock').selectOption('M9');
  await expect(full).toContainText('2.9 m');
  await percent.fill('80');
  await percent.press('Enter');
  await expect(full).toContainText('2.3 m');
  expect(heard).toEqual([]);
});
