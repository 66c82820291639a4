import { expect, test } from '@playwright/test';
import { listen, openApp, openStep, press } from './app-page.ts';
import { savePdf, seriousFaults } from './page-checks.ts';

test('the wind by keys alone: drawn on the rose, undone, typed as a table, moved to the site’s land, on paper', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Shelter');
  await page.getByRole('button', { name: 'Draw it', exact: true }).press('Enter');
  const drawing = page.getByRole('dialog', { name: 'Draw the wind' });
  const often = drawing.getByRole('group', { name: /^How often/ });
  const strong = drawing.getByRole('group', { name: /^How strong/ });
  const slider = (rose: typeof often, name: string) => rose.getByRole('slider', { name, exact: true });

  // Around the compass to the west, longer by three steps; the seasons change together.
  await slider(often, 'south-west').focus();
  await press(page, 'ArrowRight', 2);
  await expect(slider(often, 'west')).toBeFocused();
  const before = Number(await slider(often, 'west').getAttribute('aria-valuenow'));
  await press(page, 'ArrowUp', 3);
  await expect(slider(often, 'west')).toHaveAttribute('aria-valuetext', /^\d+(\.\d)? % of the hours$/);
  expect(Number(await slider(often, 'west').getAttribute('aria-valuenow'))).toBeCloseTo(before + 3, 0);
  await slider(strong, 'west').focus();
  await press(page, 'PageUp');
  await expect(slider(strong, 'west')).toHaveAttribute('aria-valuetext', /m\/s, (gentle|moderate) breeze$/);

  // One season apart: the other stays.
  await drawing.getByRole('radio', { name: 'Rest of the year' }).press('Space');
  const rest = await slider(often, 'west').getAttribute('aria-valuenow');
  await drawing.getByRole('radio', { name: 'Growing season' }).press('Space');
  await slider(often, 'west').focus();
  await press(page, 'PageUp');
  await drawing.getByRole('radio', { name: 'Rest of the year' }).press('Space');
  await expect(slider(often, 'west')).toHaveAttribute('aria-valuenow', rest ?? '');

  expect(await seriousFaults(page)).toEqual([]);

  // Each key press is an edit of its own; six undo all of it.
  const undo = drawing.getByRole('button', { name: /^Undo/ });
  while (await undo.isEnabled()) await undo.press('Enter');
  await drawing.getByRole('button', { name: 'Done' }).press('Enter');
  const panel = page.locator('.panel');
  await expect(panel).toContainText('From the sectors of the site file.');

  await page.getByRole('button', { name: 'Type a table' }).press('Enter');
  const table = page.getByRole('dialog', { name: 'The wind as a table' });
  const lines = table.getByLabel('Direction, % of hours, mean speed, season');
  await lines.fill('SW 60 18\nNE');
  await expect(table).toContainText('Line 2 is "ne"; a direction, a share of the hours and a mean speed');
  await expect(table.getByRole('button', { name: 'Use this wind' })).toBeDisabled();
  await table.getByLabel('Speeds are in').selectOption('km/h');
  await lines.fill('SW 60 18\nNE 30 27 \ncalm 10');
  await expect(
    table.getByRole('img', { name: /^Growing season: Most often from the south-west \(60 %/ }),
  ).toBeVisible();
  await table.getByRole('button', { name: 'Use this wind' }).press('Enter');
  await expect(panel).toContainText('From a table of winds. Measured 10 m above open farmland');
  await panel.getByText('Where it was measured').press('Enter');
  await panel.getByLabel('Around the site lies').selectOption('0.25');
  await expect(panel).toContainText(
    'moved to 10 m above hedges and scattered trees (roughness length 0.25 m): speeds times 0.88.',
  );

  await page.getByRole('button', { name: 'The wind on paper' }).press('Enter');
  const paper = page.getByRole('dialog', { name: 'The wind on paper' });
  await expect(paper.locator('svg[width="210mm"]').first()).toContainText('The wind at Sorrel Bank');
  await expect(paper.locator('svg[width="210mm"]').first()).toContainText('small trees in leaf sway');
  await savePdf(page, paper, 'sorrel-bank-wind.pdf');
  expect(heard).toEqual([]);
});
