import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { listen, openApp } from './app-page.ts';

test('the page on the screen goes to paper at its true size, as print and as PDF', async ({ page }) => {
  const heard = listen(page);
  await openApp(page);
  await page.getByRole('button', { name: 'Print this page' }).click();
  const dialog = page.getByRole('dialog', { name: 'Print this page' });
  await expect(dialog.locator('svg[width="297mm"][height="210mm"]').first()).toBeVisible();
  await expect(dialog).toContainText('Sorrel Bank');
  await dialog.getByLabel('Scale').selectOption('500');
  await expect(dialog).toContainText('1 : 500');

  // What the browser prints: pages of the paper's size, everything else put away.
  await page.emulateMedia({ media: 'print' });
  const sheet = page.locator('.on-paper svg[width="297mm"]').first();
  await expect(sheet).toBeVisible();
  const size = await sheet.boundingBox();
  expect(((size?.width ?? 0) * 25.4) / 96).toBeCloseTo(297, 0);
  expect(((size?.height ?? 0) * 25.4) / 96).toBeCloseTo(210, 0);
  await expect(page.locator('#root')).toBeHidden();
  await page.emulateMedia({ media: null });

  const downloading = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save PDF' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('sorrel-bank-plan.pdf');
  const pdf = readFileSync(await download.path()).toString('latin1');
  expect(pdf.startsWith('%PDF-')).toBe(true);
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!.map(Number);
  expect((width * 25.4) / 72).toBeCloseTo(297, 1);
  expect((height * 25.4) / 72).toBeCloseTo(210, 1);
  expect(heard).toEqual([]);
});
