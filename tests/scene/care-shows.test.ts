import { describe, expect, it } from 'vitest';
import { CROWN_BASE, CROWN_RADIUS, CROWN_STRIDE, CROWN_TOP } from '../../src/crowns/crown-set.ts';
import { toLocal } from '../../src/geo/frame.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import { growPlan } from '../../src/scene/grow-plan.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { beltOrBlockAtYear } from '../../src/scene/stand-at-year.ts';
import type { FeatureOf, SiteDocument } from '../../src/site/document.ts';
import type { CareRecord } from '../../src/site/records/care.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { at, box, feature, line, siteOf } from '../site/small-site.ts';

/** A willow of our own, so that its heights can be worked out here by hand. */
const MATURE_M = 12;
const SPREAD_M = 8;
const RATE = 0.15;
const SHAPE = 1.5;
const WILLOW = {
  name: 'Salix proba',
  matureHeightM: MATURE_M,
  ratePerYear: RATE,
  shape: SHAPE,
  matureSpreadM: SPREAD_M,
  clearStemShare: 0.1,
  leafClass: 'usual',
  crownForm: 'ellipsoid',
  transmittanceLeafOn: 0.2,
  transmittanceLeafOff: 0.55,
};
const BASE = 2027;
const PLANTED = 2010;
const coppice: CareRecord = { what: 'coppice', year: 2034, everyYears: 6 };

const curveM = (ageYears: number) => MATURE_M * (1 - Math.exp(-RATE * ageYears)) ** SHAPE;
/** Uncut, at the end of a calendar year's season: 0.6 m when planted. */
const uncutM = (year: number) => {
  const ageAtPlanting = -Math.log(1 - (0.6 / MATURE_M) ** (1 / SHAPE)) / RATE;
  return curveM(ageAtPlanting + year - PLANTED + 1);
};
/** Up to 2.3 m, where its curve is steepest (12 (1/3)^1.5), shoots grow evenly by 12 x 0.15 (1/3)^0.5 = 1.04 m a year. */
const STEEPEST_M = MATURE_M * (1 / 3) ** SHAPE;
const A_YEAR_M = MATURE_M * RATE * (1 / 3) ** 0.5;
const regrownM = (fromM: number, seasons: number) => {
  const over = seasons - (STEEPEST_M - fromM) / A_YEAR_M;
  return over <= 0 ? fromM + A_YEAR_M * seasons : curveM(Math.log(1.5) / RATE + over);
};
/** Half of Jucker's crown diameter carried down from the full-grown tree: CD = CDm (H/Hm)^(1.5/0.73 - 1). */
const radiusM = (lengthM: number) => (SPREAD_M / 2) * (lengthM / MATURE_M) ** (1.5 / 0.73 - 1);

const willowSite = (features: unknown[]): SiteDocument =>
  siteOf([feature('f', { kind: 'field' }, box(-20, -20, 20, 20)), ...features], {
    species: [WILLOW],
    sunshineShareByMonth: Array(12).fill(0.5),
    wind: {
      heightM: 10,
      calmShare: 0,
      sectors: [{ fromDeg: 180, frequency: 1, meanSpeedMps: 5, weibullK: 2 }],
    },
  });
const momentOf = (document: SiteDocument, calendarYear: number) => {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  return { year: calendarYear - BASE, layout: null, pace: 'usual' as const, frame, ground, weather: null };
};

describe('a coppiced row', () => {
  const row = (care?: CareRecord[]) =>
    willowSite(
      [-12, -8, -4, 0, 4, 8, 12].map((east, i) =>
        feature(
          `w${i}`,
          { kind: 'tree', species: WILLOW.name, plantedYear: PLANTED, ...(care ? { care } : {}) },
          at(east, 0),
        ),
      ),
    );

  /** The uncut scene with every crown put in by hand. */
  function withCrowns(scene: LightScene, heightM: number, lengthM: number): LightScene {
    const values = scene.crowns.values.slice();
    for (let i = 0; i < scene.crowns.count; i++) {
      values[i * CROWN_STRIDE + CROWN_TOP] = heightM;
      values[i * CROWN_STRIDE + CROWN_BASE] = 0.1 * heightM;
      values[i * CROWN_STRIDE + CROWN_RADIUS] = radiusM(lengthM);
    }
    return { ...scene, crowns: { ...scene.crowns, values } };
  }

  it('lets through what the plain slow light finds for crowns worked out by hand', () => {
    const uncut = row();
    const cases = [
      { document: uncut, year: 2036, heightM: uncutM(2036), lengthM: uncutM(2036) },
      { document: row([coppice]), year: 2036, heightM: regrownM(0.1, 3), lengthM: regrownM(0.1, 3) - 0.1 },
      { document: row([coppice]), year: 2041, heightM: regrownM(0.1, 2), lengthM: regrownM(0.1, 2) - 0.1 },
    ];
    const shares = cases.map(({ document, year, heightM, lengthM }) => {
      const moment = momentOf(document, year);
      const { scene } = lightScene(document, moment);
      const [x, y] = toLocal(moment.frame, at(0, 0));
      const grid = { columns: 1, rows: 1, cellM: 4, westM: x - 2, northM: y + 5 };
      const readingHeightM = 0.1;
      const found = runToEnd(computeLight({ scene, grid, readingHeightM }));
      const byHand = withCrowns(lightScene(uncut, momentOf(uncut, year)).scene, heightM, lengthM);
      const expected = referenceCell(byHand, plainYear(byHand), x, y + 3, readingHeightM).lightShare[12];
      expect(Math.abs(found.lightShare[12] - expected), `${year}`).toBeLessThan(0.01);
      return found.lightShare[12];
    });
    console.log(`season’s light 3 m beside the row: ${shares.map((share) => share.toFixed(3)).join(', ')}`);
    const [uncutShare, cutShare, cutAgainShare] = shares;
    expect(uncutShare).toBeLessThan(0.5);
    expect(cutShare).toBeGreaterThan(0.75);
    expect(cutAgainShare).toBeGreaterThan(cutShare);
  });
});

describe('a coppiced belt', () => {
  const belt = (properties: object) =>
    willowSite([
      feature(
        'b',
        { kind: 'belt', widthM: 3, opticalPorosityLeafOn: 0.4, opticalPorosityLeafOff: 0.6, ...properties },
        line([-200, 0], [200, 0]),
      ),
    ]);
  /** Share of the year's open wind in the middle behind it, south wind. */
  function shareBehind(document: SiteDocument, calendarYear: number, distanceM: number): number {
    const moment = momentOf(document, calendarYear);
    const { scene } = shelterScene(document, moment);
    const [x, y] = toLocal(moment.frame, at(0, distanceM));
    const grid = { columns: 1, rows: 1, cellM: 1, westM: x - 0.5, northM: y + 0.5 };
    const asked = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
    return runToEnd(computeShelter({ ...asked, scene, grid })).windShare[2];
  }
  const grown = { species: WILLOW.name, plantedYear: PLANTED };
  const coppiced = belt({ ...grown, care: [coppice] });

  it('shelters as one of the height that is left would, and at first hardly at all', () => {
    const spotM = 5 * uncutM(2033);
    for (const [year, heightM] of [
      [2033, uncutM(2033)],
      [2034, regrownM(0.1, 1)],
      [2037, regrownM(0.1, 4)],
    ] as const) {
      const asTall = belt({ heightM });
      expect(shareBehind(coppiced, year, spotM), `${year}`).toBeCloseTo(shareBehind(asTall, year, spotM), 6);
    }
    const shares = [2033, 2034, 2035, 2037, 2039].map((year) => shareBehind(coppiced, year, spotM));
    console.log(`share of open wind behind the belt: ${shares.map((share) => share.toFixed(2)).join(', ')}`);
    expect(shares[0]).toBeLessThan(0.7);
    expect(shares[1]).toBeGreaterThan(0.97);
    for (let i = 2; i < shares.length; i++) expect(shares[i]).toBeLessThanOrEqual(shares[i - 1]);
    // In the winter of 2040 it is cut again (a leap year, with another mix of leafy and leafless days).
    const asLow = belt({ heightM: regrownM(0.1, 1) });
    expect(shareBehind(coppiced, 2040, spotM)).toBeCloseTo(shareBehind(asLow, 2040, spotM), 6);
  });

  const standOf = (properties: object, calendarYear: number) => {
    const document = belt(properties);
    return beltOrBlockAtYear(
      document,
      document.features[1] as FeatureOf<'belt'>,
      momentOf(document, calendarYear),
    );
  };

  it('grows from the ground, whatever foot it had; pollarded it is open below its heads', () => {
    const raised = { ...grown, baseHeightM: 1.5 };
    expect(standOf({ ...raised, care: [coppice] }, 2033)!.baseM).toBe(1.5);
    expect(standOf({ ...raised, care: [coppice] }, 2036)!.baseM).toBe(0);
    const pollard: CareRecord = { what: 'pollard', year: 2034, heightM: 2.5 };
    expect(standOf({ ...grown, care: [pollard] }, 2036)!.baseM).toBe(2.5);
    expect(standOf({ ...grown, care: [{ what: 'raiseCrown', year: 2034, heightM: 2 }] }, 2036)!.baseM).toBe(
      2,
    );
  });

  it('thinned lets more through: its optical depth is that share of what it was', () => {
    const thin: CareRecord = { what: 'thin', year: 2034, share: 0.25 };
    const before = standOf(grown, 2034)!;
    const after = standOf({ ...grown, care: [thin] }, 2034)!;
    expect(after.porosityOn).toBeCloseTo(0.4 ** 0.75, 9);
    expect(after.depthPerMOn).toBeCloseTo(0.75 * before.depthPerMOn, 9);
    expect(standOf({ ...grown, care: [thin] }, 2039)).toEqual(standOf(grown, 2039));
  });

  it('replaced by another species has nothing of the first but its place and width', () => {
    const care: CareRecord[] = [{ what: 'replace', year: 2034, species: 'Carpinus betulus' }];
    const seen = { ...grown, baseHeightM: 1.5, care };
    const hornbeam = standOf(
      {
        species: 'Carpinus betulus',
        plantedYear: 2034,
        opticalPorosityLeafOn: undefined,
        opticalPorosityLeafOff: undefined,
      },
      2045,
    )!;
    expect(standOf(seen, 2045)).toEqual(hornbeam);
    expect(standOf(seen, 2033)!.porosityOn).toBe(0.4);
  });
});

describe('a thinned block', () => {
  it('has that share of its foliage, and of its depth in the wind', () => {
    const block = (care: CareRecord[]) =>
      willowSite([
        feature('b', { kind: 'block', heightM: 9, leafAreaDensityM2M3: 0.4, care }, box(0, 0, 9, 9)),
      ]);
    const at2034 = (document: SiteDocument) =>
      beltOrBlockAtYear(document, document.features[1] as FeatureOf<'block'>, momentOf(document, 2034))!;
    const thinned = at2034(block([{ what: 'thin', year: 2034, share: 0.5 }]));
    expect(thinned.depthPerMOn).toBeCloseTo(0.5 * at2034(block([])).depthPerMOn, 9);
    expect(thinned.porosityOn).toBeCloseTo(Math.sqrt(at2034(block([])).porosityOn), 9);
    expect(at2034(block([{ what: 'raiseCrown', year: 2034, heightM: 3 }])).baseM).toBe(3);
  });
});

describe('what stands there after a replacement', () => {
  const care: CareRecord[] = [
    { what: 'replace', year: 2034, species: 'Juglans regia' },
    { what: 'replace', year: 2044 },
    { what: 'die', year: 2050 },
    { what: 'replace', year: 2052, species: 'Corylus avellana' },
  ];
  const document = willowSite([
    feature(
      't',
      {
        kind: 'tree',
        tag: 'A1',
        variety: 'Bowles',
        species: WILLOW.name,
        heightM: 8,
        crownForm: 'cone',
        care,
      },
      at(0, 0),
    ),
    feature(
      'b',
      { kind: 'belt', species: WILLOW.name, alsoSpecies: ['Alnus incana'], heightM: 8, care },
      line([0, 9], [20, 9]),
    ),
  ]);
  const thingsIn = (calendarYear: number) => growPlan(document, momentOf(document, calendarYear)).things;

  it('is called by its own name in its own years, and grows by its own curve', () => {
    const named = (calendarYear: number) =>
      thingsIn(calendarYear).map(({ label, species }) => [label, species]);
    expect(named(2033)).toEqual([
      ['Bowles A1', WILLOW.name],
      ['Mixed Salix proba belt', WILLOW.name],
    ]);
    for (const year of [2034, 2049])
      expect(named(year)).toEqual([
        ['walnut A1', 'Juglans regia'],
        ['Walnut belt', 'Juglans regia'],
      ]);
    expect(named(2050)).toEqual([]);
    expect(named(2052)).toEqual([
      ['hazel A1', 'Corylus avellana'],
      ['Hazel belt', 'Corylus avellana'],
    ]);
  });

  it('starts young again each time', () => {
    const heights = [2033, 2034, 2043, 2044, 2052].map((year) => thingsIn(year)[0].heightM);
    expect(heights[0]).toBeGreaterThan(8);
    expect(heights[2]).toBeGreaterThan(2);
    for (const i of [1, 3, 4]) expect(heights[i]).toBeLessThan(1.5);
  });
});
