import { expect, type Page, test } from '@playwright/test';
import { listen, openApp, openStep } from './app-page.ts';
import { seriousFaults } from './page-checks.ts';

const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
];
const STEPS = ['Ground', 'Shelter', 'Tall trees', 'Light'];

/** What is wider than the window, if anything scrolls sideways. */
const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.getBoundingClientRect().right > clientWidth + 1)
      .map((element) => `${element.tagName} ${element.className}`);
  });

for (const viewport of SIZES) {
  test(`every panel at ${viewport.width} × ${viewport.height}: readable by all, nothing sticks out, no complaints`, async ({
    page,
  }, info) => {
    const heard = listen(page);
    await page.setViewportSize(viewport);
    await openApp(page);
    await expect(page.getByText(/^Working out the light/)).toHaveCount(0);
    const found: string[] = [];
    for (const name of STEPS) {
      await openStep(page, name);
      await expect(
        page.getByRole('complementary', { name: 'Panel' }).getByRole('heading').first(),
      ).toBeVisible();
      await page.screenshot({
        path: info.outputPath(`${name.replace(' ', '-').toLowerCase()}-${viewport.width}.png`),
      });
      found.push(...(await seriousFaults(page)).map((fault) => `${name}: ${fault}`));
      found.push(...(await tooWide(page)).map((wide) => `${name} is too wide: ${wide}`));
    }
    expect(found).toEqual([]);
    expect(heard).toEqual([]);
  });
}

test('on a phone the map comes first, a touch reads a place, and the panel is one press away', async ({
  page,
}) => {
  await page.setViewportSize(SIZES[2]);
  await openApp(page);
  await page.getByTestId('map-canvas').click({ position: { x: 180, y: 200 } });
  await expect(page.getByTestId('read-out')).toBeVisible();
  await openStep(page, 'Light');
  const panel = page.getByRole('complementary', { name: 'Panel' });
  await expect(panel.getByRole('heading', { name: 'Do the patches get enough light?' })).toBeVisible();
  await page.getByRole('button', { name: 'Show the map' }).click();
  await expect(page.getByTestId('map-canvas')).toBeVisible();
});
