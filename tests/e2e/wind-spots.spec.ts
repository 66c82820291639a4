import { expect, test } from '@playwright/test';
import { listen, openApp, openStep, press } from './app-page.ts';
import { savePdf, seriousFaults, tooLow } from './page-checks.ts';

test('wind spots on a telephone, by keys alone: asked, written down, read, scored, set right, undone, on paper', async ({
  page,
}) => {
  const heard = listen(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await openApp(page);
  await openStep(page, 'Shelter');
  await page.getByText('Is it true? Check it with two wind meters').press('Enter');
  await page
    .getByRole('listitem')
    .getByRole('button', { name: 'Spruces on the west edge', exact: true })
    .press('Enter');
  const panel = page.getByTestId('wind-spots');
  await expect(panel.getByRole('button', { name: /^Back to/ })).toBeFocused();
  await panel.getByLabel('Day', { exact: true }).fill('2027-10-20');
  const heights = panel.getByLabel('Spots behind it, in its heights');
  await heights.fill('2, 3, 5');
  await heights.press('Enter');
  await expect(panel).toContainText(
    /\d+ to \d+ %.*of the open wind 5 heights behind Spruces on the west edge/,
  );
  await expect(panel).toContainText('3 spots; tape from');
  await expect(panel).toContainText(/From [A-Z] \d+\.\d\d m towards [A-Z], then \d+\.\d\d m square to the/);

  await panel.getByRole('button', { name: 'Write this down before measuring' }).press('Enter');
  const waiting = panel.getByTestId('waiting-spots');
  await expect(waiting.getByRole('listitem')).toHaveCount(3);
  for (const [which, there] of [
    ['Wind 2 heights', '1.9'],
    ['Wind 3 heights', '1.8'],
    ['Wind 5 heights', '1.8'],
  ]) {
    await waiting.getByRole('button', { name: `Type what was read of ${which}` }).press('Enter');
    await expect(panel.getByLabel('Mean of the meter in the open')).toBeFocused();
    await panel.getByLabel('Mean of the meter in the open').fill('4.2');
    await panel.getByLabel('Mean of the meter at the spot').fill(there);
    await press(page, 'Enter');
    await expect(panel.getByLabel('Mean of the meter in the open')).toHaveCount(0);
  }
  const score = panel.getByTestId('wind-score');
  await expect(score).toContainText(
    /3 readings: .*inside what was measured behind other belts; in the mean \d+ points more/,
  );
  await expect(score).toContainText(
    /That fits a belt that lets \d+ % of the daylight through instead of 25 %/,
  );

  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(panel)).toEqual([]);

  await score.getByRole('button', { name: /^Take .* as the daylight through it$/ }).press('Enter');
  await expect(score).toContainText('as near as two hand meters can tell');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(score).toContainText('of the daylight through instead of 25 %');

  await panel.getByRole('button', { name: 'Print the page to take outside' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Wind spots on paper' });
  await expect(dialog.locator('svg[width="210mm"]').first()).toContainText('Do not measure in a gale');
  await savePdf(page, dialog, 'sorrel-bank-wind-spots.pdf');
  expect(heard).toEqual([]);
});
