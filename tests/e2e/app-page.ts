import { expect, type Locator, type Page } from '@playwright/test';

/** What the app says on its own where it should not: page errors, console errors and warnings. */
export function listen(page: Page): string[] {
  const heard: string[] = [];
  page.on('pageerror', (error) => heard.push(`page error: ${error.message}`));
  page.on('console', (message) => {
    // The software renderer of a browser without a graphics card says that it is slow.
    if (/GPU stall|software WebGL|swiftshader/i.test(message.text())) return;
    if (message.type() === 'error' || message.type() === 'warning')
      heard.push(`${message.type()}: ${message.text()}`);
  });
  return heard;
}

export const mapOf = (page: Page): Locator => page.getByTestId('map-canvas');
export const readOut = (page: Page): Locator => page.getByTestId('read-out');
export const siteName = (page: Page): Locator => page.getByLabel('Name of the site');

/** Opens the app for the first time, with its demo, and waits until the map can be drawn on. */
export async function openApp(page: Page): Promise<void> {
  await page.goto('./');
  await expect(siteName(page)).toHaveValue('Sorrel Bank');
  await expect(mapOf(page)).toBeVisible();
  await mapReady(page);
}

/** The scale bar comes with the map's keyboard; the sheet itself is there before either. */
const mapReady = (page: Page): Promise<void> => expect(page.getByTestId('scale-bar')).toBeAttached();

export const textOf = async (locator: Locator): Promise<string> =>
  ((await locator.textContent()) ?? '').trim();

/** Opens one of the steps. */
export async function openStep(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name }).press('Enter');
}

/** Presses a key so many times on what has the focus. */
export async function press(page: Page, key: string, times = 1): Promise<void> {
  for (let i = 0; i < times; i++) await page.keyboard.press(key);
}

/** Moves the cross by whole metres to the east and north. */
export async function step(page: Page, eastM: number, northM: number): Promise<void> {
  for (const [metres, forward, back] of [
    [eastM, 'ArrowRight', 'ArrowLeft'],
    [northM, 'ArrowUp', 'ArrowDown'],
  ] as const) {
    const key = metres >= 0 ? forward : back;
    await press(page, `Shift+${key}`, Math.floor(Math.abs(metres) / 10));
    await press(page, key, Math.abs(metres) % 10);
  }
}

/** Lets go of everything, shows the whole site, and puts the cross in the middle of the map. */
export async function crossInTheMiddle(page: Page): Promise<void> {
  await mapReady(page);
  await mapOf(page).focus();
  await press(page, 'Escape', 4);
  await expect(readOut(page)).toHaveCount(0);
  await press(page, 'Home');
  await press(page, 'ArrowRight');
  await expect(readOut(page)).toBeVisible();
}

/** Waits until light and shelter at the cross belong to what is on the screen. */
export async function answered(page: Page): Promise<void> {
  await expect(readOut(page)).toContainText('Light');
  await expect(readOut(page)).toContainText('Wind');
  await expect(page.getByText(/^Working out the (light|shelter)/)).toHaveCount(0);
  await expect(readOut(page)).not.toContainText('earlier');
}
