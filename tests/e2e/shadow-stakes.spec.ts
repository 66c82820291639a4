import { expect, test } from '@playwright/test';
import { listen, openApp, openStep, press } from './app-page.ts';
import { savePdf, seriousFaults, tooLow } from './page-checks.ts';

test('shadow stakes on a telephone, by keys alone: staked, seen, scored, set right, undone, on paper', async ({
  page,
}) => {
  const heard = listen(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await openApp(page);
  await openStep(page, 'Tall trees');
  await page.getByRole('button', { name: 'F1', exact: true }).press('Enter');
  await page.getByRole('button', { name: 'Shadow stakes' }).press('Enter');
  const panel = page.getByTestId('stakes');
  await expect(panel.getByRole('button', { name: /^Back to/ })).toBeFocused();
  await panel.getByLabel('Day', { exact: true }).fill('2027-06-21');
  await expect(panel).toContainText('on Monday 21 June 2027');
  await expect(panel).toContainText(/From [A-Z] \d+\.\d\d m towards [A-Z], then \d+\.\d\d m square to the/);

  for (const [time, metres] of [
    ['09:00', '0.9'],
    ['11:00', '0.5'],
    ['16:00', '0.6'],
  ]) {
    const opens = panel.getByRole('button', { name: `Type what was seen at ${time}` });
    await opens.press('Enter');
    await expect(panel.getByLabel('Seen at, by the clock there')).toBeFocused();
    await panel.getByLabel('by', { exact: true }).first().fill(metres);
    await press(page, 'Enter');
    await expect(opens).toBeFocused();
  }
  const score = panel.getByTestId('stake-score');
  await expect(score).toContainText('3 readings: in the mean the tip was');
  await expect(score).toContainText(/That fits a tree \d\.\d m taller than the site says/);

  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(panel)).toEqual([]);

  await score.getByRole('button', { name: /^Take .* as its height$/ }).press('Enter');
  await expect(score).toContainText('as near as the edge of a shadow can be seen');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(score).toContainText('taller than the site says');

  await panel.getByRole('button', { name: 'Print the page to take outside' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Shadow stakes on paper' });
  await expect(dialog.locator('svg[width="210mm"]').first()).toContainText('Never look at the sun');
  await savePdf(page, dialog, 'sorrel-bank-shadow-stakes.pdf');
  expect(heard).toEqual([]);
});
