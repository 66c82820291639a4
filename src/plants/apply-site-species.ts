import { beltHabitOf } from './crown-density.ts';
import { describeSpecies } from './describe-species.ts';
import { curveOfRate } from './growth-rates.ts';
import type { SiteSpeciesRecord } from './site-species.ts';
import type { BeltHabit, Species } from './species.ts';

/** Source of a number that the site's own file gives without saying where it is from. */
const SITE_FILE = 'the site file';

/** What a new species starts from where it names no relative: a small broadleaf of no particular kind. */
const PLAIN_TREE: Species = describeSpecies('', '', {
  role: 'T',
  form: 'ellipsoid',
  heightM: 10,
  growth: 'medium',
  spreadM: 7,
  clearStem: 0.12,
  leaf: 'usual',
  through: [0.2, 0.5],
  light: 'light shade',
});

function belt(start: Species, record: SiteSpeciesRecord, source: string): BeltHabit | null {
  const { opticalPorosityLeafOn: on, opticalPorosityLeafOff: off, beltWidthM } = record;
  if (on === undefined && off === undefined && beltWidthM === undefined) return start.belt;
  const usual = beltHabitOf(start);
  return {
    opticalPorosityLeafOn: on ?? usual.opticalPorosityLeafOn,
    opticalPorosityLeafOff: off ?? Math.max(on ?? 0, usual.opticalPorosityLeafOff),
    widthM: beltWidthM ?? usual.widthM,
    source,
  };
}

/** A species with the site's own numbers laid over it. A new height without a spread keeps the tree's shape. */
export function applySiteSpecies(start: Species | null, record: SiteSpeciesRecord): Species {
  const from = start ?? PLAIN_TREE;
  const source = record.source ?? SITE_FILE;
  const heightM = record.matureHeightM ?? from.curve.maxHeightM;
  const rated = record.growthRate
    ? curveOfRate(record.growthRate, heightM)
    : { ...from.curve, maxHeightM: heightM };
  const curve = {
    ...rated,
    ratePerYear: record.ratePerYear ?? rated.ratePerYear,
    shape: record.shape ?? rated.shape,
  };
  const ownCurve = [record.growthRate, record.ratePerYear, record.shape].some((value) => value !== undefined);
  const leafOn = record.transmittanceLeafOn ?? from.transmittance.leafOn;
  const ownShade = record.transmittanceLeafOn ?? record.transmittanceLeafOff;
  return {
    ...from,
    botanicalName: record.name,
    commonName: record.commonName ?? (from.commonName || record.name),
    synonyms: start?.botanicalName === record.name ? from.synonyms : [],
    role: record.role ?? from.role,
    crownForm: record.crownForm ?? from.crownForm,
    curve,
    heightSource: record.matureHeightM === undefined ? from.heightSource : source,
    curveSource: ownCurve ? source : from.curveSource,
    spread: {
      ...from.spread,
      matureHeightM: heightM,
      matureSpreadM:
        record.matureSpreadM ?? from.spread.matureSpreadM * (heightM / from.spread.matureHeightM),
    },
    vigour: record.vigour ?? from.vigour,
    clearStemShare: record.clearStemShare ?? from.clearStemShare,
    leafClass: record.leafClass ?? from.leafClass,
    transmittance: {
      leafOn,
      leafOff: record.transmittanceLeafOff ?? Math.max(leafOn, from.transmittance.leafOff),
      source: ownShade === undefined ? from.transmittance.source : source,
    },
    belt: belt(from, record, source),
    rootstocks:
      record.rootstocks?.map(({ name, sizeFactor }) => ({ name, sizeFactor, source })) ?? from.rootstocks,
    yearsToBear: record.yearsToBear === undefined ? from.yearsToBear : record.yearsToBear,
    lightNeed: record.lightNeed ?? from.lightNeed,
    fixesNitrogen: record.fixesNitrogen ?? from.fixesNitrogen,
    shootsAgain: record.shootsAgain ?? from.shootsAgain,
    cautions: record.cautions ?? from.cautions,
  };
}
