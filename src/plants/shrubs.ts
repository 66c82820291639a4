import { PRIVET, RAW_ELDER, SPREADS, SUCKERS, THORNS, WHITE_PINE_RUST } from './cautions.ts';
import { describeSpecies, type SpeciesDescription } from './describe-species.ts';

/** A bush: a dome down to the ground. */
const bush = (
  heightM: number,
  spreadM: number,
  rest: Omit<SpeciesDescription, 'role' | 'form' | 'heightM' | 'spreadM' | 'growth' | 'clearStem'>,
): SpeciesDescription => ({
  role: 'U',
  form: 'dome',
  heightM,
  spreadM,
  growth: 'shrub',
  clearStem: 0,
  ...rest,
});

export const SHRUBS = [
  describeSpecies(
    'Ribes nigrum',
    'blackcurrant',
    bush(1.6, 1.6, {
      leaf: 'early',
      through: [0.2, 0.52],
      light: 'light shade',
      bearsAfterYears: 2,
      cautions: [WHITE_PINE_RUST],
    }),
  ),
  describeSpecies(
    'Ribes rubrum',
    'redcurrant',
    bush(1.5, 1.4, {
      leaf: 'early',
      through: [0.2, 0.52],
      light: 'half shade',
      bearsAfterYears: 2,
      cautions: [WHITE_PINE_RUST],
    }),
  ),
  describeSpecies(
    'Ribes uva-crispa',
    'gooseberry',
    bush(1.3, 1.4, {
      leaf: 'early',
      through: [0.2, 0.5],
      light: 'half shade',
      bearsAfterYears: 2,
      cautions: [THORNS, WHITE_PINE_RUST],
    }),
  ),
  describeSpecies(
    'Rosa rugosa',
    'ramanas rose',
    bush(1.8, 2, {
      leaf: 'early',
      through: [0.18, 0.5],
      light: 'open',
      belt: [0.38, 0.62, 1.5],
      bearsAfterYears: 2,
      cautions: [THORNS, SUCKERS, SPREADS],
    }),
  ),
  describeSpecies(
    'Rosa canina',
    'dog rose',
    bush(3, 3, {
      leaf: 'early',
      through: [0.25, 0.52],
      light: 'light shade',
      belt: [0.42, 0.65, 2],
      bearsAfterYears: 3,
      cautions: [THORNS],
    }),
  ),
  describeSpecies(
    'Rubus idaeus',
    'raspberry',
    bush(1.7, 0.8, {
      leaf: 'usual',
      through: [0.22, 0.6],
      light: 'light shade',
      bearsAfterYears: 1,
      cautions: [SUCKERS],
    }),
  ),
  describeSpecies(
    'Vaccinium corymbosum',
    'highbush blueberry',
    bush(2, 1.5, { leaf: 'usual', through: [0.2, 0.5], light: 'light shade', bearsAfterYears: 3 }),
  ),
  describeSpecies(
    'Lonicera caerulea',
    'honeyberry',
    bush(1.6, 1.5, { leaf: 'early', through: [0.2, 0.5], light: 'light shade', bearsAfterYears: 3 }),
  ),
  describeSpecies(
    'Aronia melanocarpa',
    'black chokeberry',
    bush(1.8, 1.8, {
      leaf: 'usual',
      through: [0.2, 0.5],
      light: 'light shade',
      bearsAfterYears: 3,
      cautions: [SUCKERS],
    }),
  ),
  describeSpecies(
    'Sambucus canadensis',
    'American elder',
    bush(3, 3, {
      leaf: 'usual',
      through: [0.2, 0.55],
      light: 'half shade',
      bearsAfterYears: 3,
      cautions: [RAW_ELDER, SUCKERS],
    }),
  ),
  describeSpecies(
    'Ligustrum ovalifolium',
    'garden privet',
    bush(4, 3, {
      // Leafless figures are those of bare twigs: half of the leaves hang on through the winter.
      leaf: 'semi-evergreen',
      through: [0.12, 0.42],
      light: 'half shade',
      belt: [0.25, 0.5, 1.5],
      cautions: [PRIVET],
    }),
  ),
  describeSpecies(
    'Ligustrum vulgare',
    'wild privet',
    bush(3, 2.5, {
      leaf: 'semi-evergreen',
      through: [0.16, 0.46],
      light: 'half shade',
      belt: [0.3, 0.55, 1.5],
      cautions: [PRIVET, SPREADS],
    }),
  ),
];
