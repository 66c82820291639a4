import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Locator, type Page } from '@playwright/test';
import type { AxeResults } from 'axe-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
/** Smallest height of what is touched, pixels. */
const TOUCH_PX = 40;

/** Serious faults that the accessibility checker finds on the page, one line each. */
export async function seriousFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.addScriptTag({ path: AXE });
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run: () => Promise<AxeResults> } };
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.html.slice(0, 120)}`),
      );
  });
}

/** What in a part of the page is too low to be touched. */
export const tooLow = (part: Locator): Promise<(string | null)[]> =>
  part.evaluate(
    (element, touchPx) =>
      [...element.querySelectorAll('button, input, select, summary')]
        .filter((each) => !(each instanceof HTMLInputElement && each.type === 'radio'))
        // What is not shown cannot be touched; a box that is ticked is touched by its words as well.
        .filter((each) => each.checkVisibility())
        .map((each) => (each.matches('[type="checkbox"]') ? (each.closest('label') ?? each) : each))
        .filter((each) => each.getBoundingClientRect().height < touchPx)
        .map((each) => each.textContent),
    TOUCH_PX,
  );

/** Saves the PDF of a print dialog by its button, and holds it to its name. */
export async function savePdf(page: Page, dialog: Locator, fileName: string): Promise<void> {
  const downloading = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save PDF' }).press('Enter');
  const download = await downloading;
  expect(download.suggestedFilename()).toBe(fileName);
  expect(readFileSync(await download.path(), 'latin1').startsWith('%PDF-')).toBe(true);
}
