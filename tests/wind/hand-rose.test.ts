import { describe, expect, it } from 'vitest';
import { climateFromRecord } from '../../src/wind/climate-from-record.ts';
import { drawnRecord, onSixteen, pulled, withCalms, yearOf } from '../../src/wind/hand-rose.ts';
import type { WindClimate } from '../../src/wind/shelter-types.ts';

const even = (calmShare: number, meanSpeedMps: number): WindClimate['growing'] => ({
  calmShare,
  sectors: Array.from({ length: 16 }, (_, i) => ({
    fromDeg: i * 22.5,
    frequency: (1 - calmShare) / 16,
    meanSpeedMps,
    weibullK: 2,
  })),
});
const climate: WindClimate = { heightM: 10, growing: even(0.1, 3), rest: even(0.02, 5) };
const total = ({ calmShare, sectors }: WindClimate['growing']) =>
  calmShare + sectors.reduce((sum, { frequency }) => sum + frequency, 0);

describe('a rose pulled by hand', () => {
  it('gives one direction its share, and the others what is left in proportion', () => {
    const first = pulled(climate, 'growing', { point: 10, share: 0.4 }, 0.5);
    expect(first.growing.sectors[10].frequency).toBeCloseTo(0.4, 12);
    expect(first.growing.sectors[2].frequency).toBeCloseTo(0.5 / 15, 12);
    expect(total(first.growing)).toBeCloseTo(1, 12);
    expect(first.rest.sectors).toEqual(climate.rest.sectors);
    const second = pulled(first, 'growing', { point: 2, share: 0.2 }, 0.5);
    const { sectors } = second.growing;
    expect(sectors[10].frequency / sectors[3].frequency).toBeCloseTo(0.4 / (0.5 / 15), 9);
  });
  it('changes both seasons by one ratio where the whole year is pulled', () => {
    const one = pulled(climate, 'growing', { point: 10, share: 0.3 }, 0.5);
    const both = pulled(one, 'year', { point: 10, share: 0.3 }, 0.5);
    const year = yearOf(both, 0.5);
    expect(year.sectors[10].frequency).toBeCloseTo(0.3, 9);
    expect(both.growing.sectors[10].frequency / both.rest.sectors[10].frequency).toBeCloseTo(
      0.3 / (0.98 / 16),
      9,
    );
    const faster = pulled(climate, 'year', { point: 4, meanSpeedMps: 8 }, 0.5);
    expect(yearOf(faster, 0.5).sectors[4].meanSpeedMps).toBeCloseTo(8, 9);
  });
  it('never takes a direction so far that the others are lost, nor below nothing', () => {
    const far = pulled(climate, 'rest', { point: 0, share: 3 }, 0.5);
    expect(far.rest.sectors[0].frequency).toBeCloseTo(0.95 * 0.98, 12);
    expect(far.rest.sectors[5].frequency).toBeGreaterThan(0);
    const gone = pulled(climate, 'rest', { point: 0, share: -1 }, 0.5);
    expect(gone.rest.sectors[0].frequency).toBe(0);
    expect(total(gone.rest)).toBeCloseTo(1, 12);
  });
  it('is kept as sectors that read back as drawn: once where the seasons are alike, else for each', () => {
    const alike = drawnRecord({ heightM: 10, growing: even(0.1, 3), rest: even(0.1, 3) });
    expect(alike.sectors).toHaveLength(16);
    expect(alike).toMatchObject({ origin: 'drawn', calmShare: 0.1, heightM: 10 });
    const record = drawnRecord(pulled(climate, 'growing', { point: 10, share: 0.4 }, 0.5));
    expect(record.sectors).toHaveLength(32);
    const back = climateFromRecord({ ...record, sectors: record.sectors! });
    expect(back.assumed).toEqual([]);
    expect(back.climate.growing.calmShare).toBe(0.1);
    expect(back.climate.rest.calmShare).toBe(0.02);
    expect(back.climate.growing.sectors[10].frequency).toBeCloseTo(0.4, 4);
    expect(back.climate.rest.sectors[10].meanSpeedMps).toBeCloseTo(5, 9);
  });
  it('takes other calms', () => {
    const calmer = withCalms(climate, 'rest', 0.3);
    expect(total(calmer.rest)).toBeCloseTo(1, 12);
    expect(calmer.growing).toBe(climate.growing);
  });
});

describe('a rose of other sectors on sixteen points', () => {
  it.each([8, 12, 16, 36])('%i sectors keep their hours, run of wind and middle direction', (count) => {
    const sectors = Array.from({ length: count }, (_, i) => ({
      fromDeg: (i * 360) / count,
      frequency: (i + 1) / ((count * (count + 1)) / 2),
      meanSpeedMps: 2 + (i % 5),
      weibullK: 2,
    }));
    const made = onSixteen({ calmShare: 0, sectors });
    const run = (some: typeof sectors) =>
      some.reduce((sum, each) => sum + each.frequency * each.meanSpeedMps, 0);
    expect(total(made)).toBeCloseTo(1, 12);
    expect(run([...made.sectors])).toBeCloseTo(run(sectors), 9);
  });
  it('both seasons as one year are shared out alike', () => {
    const season = {
      calmShare: 0,
      sectors: Array.from({ length: 12 }, (_, i) => ({
        fromDeg: i * 30,
        frequency: 1 / 12,
        meanSpeedMps: 4,
        weibullK: 2,
      })),
    };
    for (const { frequency } of yearOf({ growing: season, rest: season }, 0.4).sectors)
      expect(frequency).toBeCloseTo(1 / 16, 12);
  });
  it('an eighth gives half to its own point and a quarter to each side', () => {
    const sectors = Array.from({ length: 8 }, (_, i) => ({
      fromDeg: i * 45,
      frequency: i === 0 ? 1 : 0,
      meanSpeedMps: 4,
      weibullK: 2,
    }));
    const { sectors: made } = onSixteen({ calmShare: 0, sectors });
    expect([15, 0, 1].map((i) => made[i].frequency)).toEqual([0.25, 0.5, 0.25]);
  });
});
