import { describe, expect, it } from 'vitest';
import { inventedWeather } from '../../data-samples/invented-weather.ts';
import { sorrelBankGround } from '../../data-samples/sorrel-bank-ground.ts';
import {
  sorrelBankClimate,
  sorrelBankGroundBox,
  sorrelBankSite,
  sorrelBankSketch,
} from '../../data-samples/sorrel-bank-site.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { lightScene } from '../../src/scene/build-scene.ts';
import { patchMasks } from '../../src/scene/patch-masks.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';

/** Coarse: the question is which patches keep enough, not by how much. */
const CELL_M = 4;
const SEASON_BAND = 12;

describe('the patches of Sorrel Bank', () => {
  const sketch = sorrelBankSketch();
  const document = sorrelBankSite(sketch);
  const frame = siteFrame(document);
  const drawn = sorrelBankGround(sorrelBankGroundBox(sketch, document), 41);
  const ground = {
    ...drawn,
    westM: drawn.westM + sketch.frame.originEastingM - frame.originEastingM,
    northM: drawn.northM + sketch.frame.originNorthingM - frame.originNorthingM,
  };
  const epw = new TextEncoder().encode(inventedWeather(sorrelBankClimate, 9));
  const weather = readWeatherFile(epw, 'sorrel-bank-weather.epw');

  const tooDarkIn = (year: number): string[] => {
    const moment = { year, layout: null, pace: 'usual' } as const;
    const { scene } = lightScene(document, { frame, ground, weather, ...moment });
    const options = { frame, layout: null, fields: [], readingHeightM: 0.1, cellM: CELL_M };
    return patchMasks(document, options)
      .filter(({ grid, mask, readingHeightM, shareToKeep, areaShare }) => {
        const { lightShare } = runToEnd(computeLight({ scene, grid, readingHeightM }));
        const season = lightShare.subarray(SEASON_BAND * mask.length, (SEASON_BAND + 1) * mask.length);
        const inside = [...season].filter((_, cell) => mask[cell] === 1);
        return inside.filter((share) => share >= shareToKeep).length < areaShare * inside.length;
      })
      .map(({ name }) => name)
      .sort();
  };

  it('are light but for two, which are too dark by year 22', () => {
    expect(tooDarkIn(22)).toEqual(['Herb ground', 'Low patch']);
  });
});
