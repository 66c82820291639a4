import { SPREADS, SUCKERS } from './cautions.ts';
import { describeSpecies } from './describe-species.ts';
import { BOBINAC, NHBC, RED_ALDER_EXTENSION, WILKINSON, WILKINSON_RELATIVE } from './sources.ts';

export const ALDERS = [
  describeSpecies('Alnus cordata', 'Italian alder', {
    role: 'A',
    form: 'cone',
    heightM: 25,
    heightSource: `the height the curve of ${BOBINAC} tends to; NHBC gives 18 m for alder`,
    // 13.9 m at 11 years and 19.0 m at 16, between measured means of 13.4 m and 19.5 m.
    growth: { curve: { maxHeightM: 25, ratePerYear: 0.142, shape: 2.5 }, source: BOBINAC },
    spreadM: 9,
    clearStem: 0.08,
    leaf: 'usual',
    through: [0.24, 0.49, WILKINSON],
    light: 'open',
    fixesNitrogen: true,
    belt: [0.4, 0.65, 4],
  }),
  describeSpecies('Alnus glutinosa', 'common alder', {
    role: 'A',
    form: 'ellipsoid',
    heightM: 18,
    heightSource: NHBC,
    // Very fast to 7-10 years, then slower (Forestry 83:163-175): half its height at 9 years.
    growth: {
      curve: { maxHeightM: 18, ratePerYear: 0.1, shape: 1.3 },
      source: 'very fast to age 7-10, then slower: Forestry 83:163-175; numbers common practice',
    },
    spreadM: 9,
    clearStem: 0.1,
    leaf: 'usual',
    through: [0.24, 0.49, WILKINSON],
    light: 'open',
    fixesNitrogen: true,
    belt: [0.4, 0.65, 4],
    cautions: [SPREADS],
  }),
  describeSpecies('Alnus incana', 'grey alder', {
    role: 'A',
    form: 'ellipsoid',
    heightM: 16,
    growth: 'very fast',
    spreadM: 8,
    clearStem: 0.08,
    leaf: 'usual',
    through: [0.24, 0.49, WILKINSON_RELATIVE],
    light: 'light shade',
    fixesNitrogen: true,
    belt: [0.4, 0.65, 4],
    cautions: [SUCKERS],
  }),
  describeSpecies('Alnus rubra', 'red alder', {
    role: 'A',
    form: 'ellipsoid',
    heightM: 25,
    // 21.5 m at 20 years; the figures say 18 to 24 m, and more than 1.8 m a year at first.
    growth: { curve: { maxHeightM: 25, ratePerYear: 0.11, shape: 1.3 }, source: RED_ALDER_EXTENSION },
    spreadM: 10,
    clearStem: 0.12,
    leaf: 'usual',
    through: [0.24, 0.49, WILKINSON_RELATIVE],
    light: 'open',
    fixesNitrogen: true,
    belt: [0.42, 0.66, 4],
  }),
];
