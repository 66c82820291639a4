import { writeGeoTiff } from '../src/geo/formats/geotiff-write.ts';
import { serialiseSite } from '../src/site/serialise-site.ts';
import { inventedWeather } from './invented-weather.ts';
import { kestrelFlatSite } from './kestrel-flat-site.ts';
import { sorrelBankGround } from './sorrel-bank-ground.ts';
import {
  sorrelBankClimate,
  sorrelBankGroundBox,
  sorrelBankSite,
  sorrelBankSketch,
} from './sorrel-bank-site.ts';

const GROUND_SEED = 41;
const WEATHER_SEED = 9;

/** Every file of the samples by its path under `data-samples/`. The same bytes each time. */
export function makeSamples(): ReadonlyMap<string, Uint8Array> {
  const text = (content: string) => new TextEncoder().encode(content);
  const sketch = sorrelBankSketch();
  const sorrelBank = sorrelBankSite(sketch);
  const ground = sorrelBankGround(sorrelBankGroundBox(sketch, sorrelBank), GROUND_SEED);
  return new Map([
    ['sorrel-bank/sorrel-bank.site.geojson', text(serialiseSite(sorrelBank))],
    [
      'sorrel-bank/sorrel-bank-ground.tif',
      writeGeoTiff([{ name: 'elevation, m', values: ground.values }], ground, sketch.frame),
    ],
    ['sorrel-bank/sorrel-bank-weather.epw', text(inventedWeather(sorrelBankClimate, WEATHER_SEED))],
    ['kestrel-flat/kestrel-flat.site.geojson', text(serialiseSite(kestrelFlatSite()))],
  ]);
}
