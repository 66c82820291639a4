import { expect, test } from 'vitest';
import { siteRecord } from '../../src/site/records/site.ts';
import { middleOfSeason, seasonWords } from '../../src/site/season-words.ts';

const site = (growingSeason?: { firstDay: string; lastDay: string }) =>
  siteRecord.parse({ formatVersion: 1, name: 'Close', timeZone: 'UTC', baseYear: 2027, growingSeason });

test.each([
  [undefined, 45, 'April–September', 6],
  [undefined, -43, 'October–March', 0],
  [{ firstDay: '04-15', lastDay: '10-10' }, 45, '15 April–10 October', 6],
  [{ firstDay: '06-01', lastDay: '06-30' }, 60, 'June', 5],
  [{ firstDay: '02-01', lastDay: '02-28' }, 38, 'February', 1],
])('the season %o at %d° is %s', (season, latDeg, words, month) => {
  expect(seasonWords(site(season), latDeg)).toBe(words);
  expect(middleOfSeason(site(season), latDeg)).toBe(month);
});
