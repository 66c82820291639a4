import { describe, expect, it } from 'vitest';
import { fitVigour, SPREADS, vigourOf, vigoursWithoutEach } from '../../src/growth/fit-vigour.ts';
import {
  expectedHeightM,
  type MeasuredPlant,
  plantVigour,
  READING_SPREAD,
} from '../../src/growth/plant-vigour.ts';
import { seededRandom } from '../../src/numeric/random.ts';

const curve = { maxHeightM: 20, ratePerYear: 0.06, shape: 1.6 };
const start = { curve, rootstockFactor: 1, startM: 0.6 };
const plant = (species: string, vigour: number, seasons = 15, readFactor = 1): MeasuredPlant => ({
  ...start,
  species,
  readings: [{ seasons, heightM: readFactor * expectedHeightM(start, vigour, seasons) }],
});
const many = (species: string, vigour: number, count: number) =>
  Array.from({ length: count }, () => plant(species, vigour));

describe('the vigour of a site', () => {
  it('is not told from fewer than three plants', () => {
    expect(fitVigour([])).toBeNull();
    expect(fitVigour(many('a', 1.4, 2))).toBeNull();
    expect(fitVigour(many('a', 1.4, 3))).not.toBeNull();
  });

  it('is drawn towards 1, the less the more species were measured', () => {
    const few = fitVigour(many('a', 1.4, 3))!.site;
    const more = fitVigour([...many('a', 1.4, 3), ...many('b', 1.4, 3)])!.site;
    const most = fitVigour(
      ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].flatMap((name) => many(name, 1.4, 10)),
    )!.site;
    expect(few.vigour).toBeGreaterThan(1);
    expect(more.vigour).toBeGreaterThan(few.vigour);
    expect(most.vigour).toBeGreaterThan(more.vigour);
    expect(most.vigour).toBeCloseTo(1.4, 1);
    expect(most.errorShare).toBeLessThan(few.errorShare);
  });

  it('is the weighted mean of the two-stage normal model, worked by hand', () => {
    const plants = [...many('a', 1.3, 4), ...many('b', 0.9, 2)];
    const own = (one: MeasuredPlant) => plantVigour(one).variance + SPREADS.plants ** 2;
    const [va, vb] = [own(plants[0]) / 4, own(plants[4]) / 2];
    const [wa, wb, w0] = [
      1 / (va + SPREADS.species ** 2),
      1 / (vb + SPREADS.species ** 2),
      1 / SPREADS.sites ** 2,
    ];
    const site = (wa * Math.log(1.3) + wb * Math.log(0.9)) / (wa + wb + w0);
    const a = (Math.log(1.3) / va + site / SPREADS.species ** 2) / (1 / va + 1 / SPREADS.species ** 2);
    const fit = fitVigour(plants)!;
    expect(fit.site.vigour).toBeCloseTo(Math.exp(site), 2);
    expect(vigourOf(fit, 'a')).toBeCloseTo(Math.exp(a), 2);
  });

  it('gives a species its own only from two plants on, between what it says and the site', () => {
    const fit = fitVigour([...many('a', 1.5, 6), plant('b', 0.7), ...many('c', 1, 6)])!;
    expect(fit.species.has('b')).toBe(false);
    expect(vigourOf(fit, 'b')).toBe(fit.site.vigour);
    expect(vigourOf(fit, 'a')).toBeGreaterThan(fit.site.vigour);
    expect(vigourOf(fit, 'a')).toBeLessThan(1.5);
    expect(vigourOf(fit, 'c')).toBeLessThan(fit.site.vigour);
  });

  it('is told without each plant by the others alone', () => {
    const plants = [...many('a', 1.2, 3), plant('a', 0.6)];
    const without = vigoursWithoutEach(plants);
    expect(without[3]).toBeCloseTo(vigourOf(fitVigour(plants.slice(0, 3))!, 'a'), 9);
    expect(vigoursWithoutEach(plants.slice(0, 3))).toEqual([null, null, null]);
  });
});

describe('sites drawn by chance, 200 of them', () => {
  const normal = (random: () => number): number =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  it('are found within the error that is stated, and nearer than without the rule', () => {
    const random = seededRandom(5);
    let inside = 0;
    const errors = { fitted: 0, usual: 0, raw: 0 };
    const species = ['a', 'b', 'c', 'd'];
    for (let site = 0; site < 200; site++) {
      const truth = SPREADS.sites * normal(random);
      const plants: MeasuredPlant[] = [];
      const truths = new Map<string, number>();
      for (const name of species) {
        truths.set(name, truth + SPREADS.species * normal(random));
        const count = 2 + Math.floor(3 * random());
        for (let i = 0; i < count; i++) {
          const own = truths.get(name)! + SPREADS.plants * normal(random);
          plants.push(
            plant(name, Math.exp(own), 8 + 20 * random(), Math.exp(READING_SPREAD * normal(random))),
          );
        }
      }
      const fit = fitVigour(plants)!;
      if (Math.abs(Math.log(fit.site.vigour) - truth) < 2 * fit.site.errorShare) inside++;
      for (const name of species) {
        const own = plants.filter((each) => each.species === name).map((each) => plantVigour(each).logVigour);
        const raw = own.reduce((sum, log) => sum + log, 0) / own.length;
        errors.fitted += (Math.log(vigourOf(fit, name)) - truths.get(name)!) ** 2;
        errors.raw += (raw - truths.get(name)!) ** 2;
        errors.usual += truths.get(name)! ** 2;
      }
    }
    const rms = (sum: number) => Math.sqrt(sum / (200 * species.length));
    console.log(
      `vigour of a species, root mean square error: ${rms(errors.fitted).toFixed(3)} by the rule, ${rms(errors.raw).toFixed(3)} by its plants alone, ${rms(errors.usual).toFixed(3)} as on usual ground; the site within two errors in ${(inside / 2).toFixed(0)} %`,
    );
    expect(inside / 200).toBeGreaterThan(0.9);
    expect(errors.fitted).toBeLessThan(errors.raw);
    expect(errors.fitted).toBeLessThan(0.25 * errors.usual);
  });
});
