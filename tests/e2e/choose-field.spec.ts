import { expect, test } from '@playwright/test';
import { listen, openApp, openStep, textOf } from './app-page.ts';
import { savePdf, seriousFaults, tooLow } from './page-checks.ts';

test('fields are compared, one is knocked out, the order is changed and taken back, and the page is saved, by keys alone', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await openStep(page, 'Ground');
  await page.getByRole('button', { name: 'Compare the fields' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Which field?' });
  await expect(dialog.locator('.answer')).toContainText('Pound Field comes first', { timeout: 240_000 });
  await expect(dialog).toContainText('Upper Lea needs');
  await expect(dialog.getByRole('table').getByRole('columnheader', { name: 'Withy Bottom' })).toBeVisible();
  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(dialog)).toEqual([]);

  // A condition knocks one out, and says by which figure.
  await dialog.getByRole('button', { name: /^Ask: no frost hollow/ }).press('Enter');
  await expect(dialog).toContainText('Withy Bottom is out: no frost hollow');
  await dialog.getByRole('button', { name: /^Ask no longer: no frost hollow/ }).press('Enter');
  await expect(dialog).not.toContainText('Withy Bottom is out');

  // The order is the person's.
  const order = dialog.getByRole('region', { name: 'What matters, the most important first' });
  const borrowed = order.getByRole('button', { name: /^Up: has both only by somebody else/ });
  for (let places = 0; places < 3; places++) await borrowed.press('Enter');
  await expect(order.getByRole('listitem').first()).toContainText('1 has both only by somebody else');
  await expect(dialog.locator('.answer')).toContainText('Upper Lea');

  await dialog.getByRole('button', { name: 'On paper' }).press('Enter');
  const paper = page.getByRole('dialog', { name: 'The choice on paper' });
  await expect(paper.locator('svg').first()).toBeVisible();
  expect(await textOf(paper)).toContain('Upper Lea');
  await savePdf(page, paper, 'sorrel-bank-which-field.pdf');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  expect(heard).toEqual([]);
});
