import { expect, type Page, test } from '@playwright/test';
import { listen, openApp, openStep, press } from './app-page.ts';
import { seriousFaults, tooLow } from './page-checks.ts';

const look = (page: Page) => page.getByRole('region', { name: 'The years in one look' });
const strip = (page: Page) => page.getByRole('region', { name: 'Year and month' });

/** Waits until all years and their band are there. */
const followed = (page: Page) => expect(look(page).getByText(/^Following the years/)).toHaveCount(0);

test('the years in one look by keys alone: the answer, curves, table, play, and the map that follows', async ({
  page,
}) => {
  const heard = listen(page);
  await openApp(page);
  await expect(page.getByText(/^Working out the light/)).toHaveCount(0);
  await strip(page).getByRole('button', { name: 'The years in one look' }).press('Enter');
  await expect(look(page)).toContainText('Pound Field is in shelter');
  await followed(page);
  await expect(look(page)).toContainText(/turns? dark|keeps enough light|too dark from the start/);
  await expect(look(page)).toContainText('crop');

  // The same as a table, for who does not see the curves.
  await look(page).getByText('The same as a table').press('Enter');
  const table = look(page).getByRole('table', { name: /^The curves every fifth year/ });
  await expect(table.getByRole('row')).toHaveCount(10);
  await expect(table.getByRole('columnheader')).toHaveText([
    'Year',
    'Field in shelter',
    'Patches with enough light',
    'Under canopy',
    'Trees bearing',
  ]);

  // The rule by arrow keys; the map follows at once, along fewer rays, until the year’s own is there.
  const rule = page.getByRole('slider', { name: 'Years after planting' });
  await rule.focus();
  await press(page, 'ArrowLeft', 3);
  await expect(rule).toHaveAttribute('aria-valuetext', /^year 17, /);
  await expect(page.getByTestId('legend')).toContainText('year 17, 0.1 m above the ground');
  await expect(page.getByTestId('legend')).not.toContainText('from before your last change');

  // Space plays, space pauses; on Play the arrow keys step.
  await press(page, ' ');
  await expect(rule).toHaveAttribute('aria-valuetext', /^year (19|2\d), /);
  await press(page, ' ');
  const play = strip(page).getByRole('button', { name: 'Play' });
  await play.focus();
  const stopped = Number(await rule.inputValue());
  await press(page, 'ArrowRight');
  await expect(rule).toHaveValue(`${stopped + 1}`);
  await strip(page).getByRole('button', { name: 'Back a year' }).press('Enter');
  await expect(rule).toHaveValue(`${stopped}`);

  expect(await seriousFaults(page)).toEqual([]);
  expect(await tooLow(strip(page).locator('.caption').first())).toEqual([]);
  await look(page).focus();
  await press(page, 'Escape');
  await expect(look(page)).toHaveCount(0);
  await expect(strip(page).getByRole('button', { name: 'The years in one look' })).toBeFocused();
  expect(heard).toEqual([]);
});

test('it opens from Tall trees, a stop keeps what is there, and it starts again', async ({ page }) => {
  await openApp(page);
  await openStep(page, 'Tall trees');
  await page
    .getByRole('complementary', { name: 'Panel' })
    .getByRole('button', { name: 'The years in one look' })
    .press('Enter');
  await expect(look(page)).toBeFocused();
  await look(page).getByRole('button', { name: 'Stop' }).press('Enter');
  await look(page).getByRole('button', { name: 'Work it out again' }).press('Enter');
  await expect(look(page)).toContainText('Pound Field is in shelter');
  await followed(page);
});
