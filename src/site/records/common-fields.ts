import type { PropertyField } from './property-field.ts';

export const MIN_YEAR = 1500;
export const MAX_YEAR = 2500;

/** A field that holds a calendar year. */
export const yearField = (key: string, label: string, help: string, detail = false): PropertyField => ({
  key,
  label,
  unit: 'year',
  help,
  min: MIN_YEAR,
  max: MAX_YEAR,
  detail,
});

/** A field that holds a share, 0 to 1 in the file and percent on the screen. */
export const shareField = (key: string, label: string, help: string, detail = false): PropertyField => ({
  key,
  label,
  unit: 'share',
  help,
  min: 0,
  max: 1,
  detail,
});

export const nameField: PropertyField = {
  key: 'name',
  label: 'Name',
  unit: 'text',
  help: 'What it is called in lists, on the map and on sheets.',
};
export const noteField: PropertyField = {
  key: 'note',
  label: 'Note',
  unit: 'longText',
  help: 'Anything worth remembering; it changes no figure.',
};
export const layoutField: PropertyField = {
  key: 'layout',
  label: 'Belongs to layout',
  unit: 'layout',
  help: 'The one alternative design it is part of; empty: it is there in all of them.',
};
export const statusField: PropertyField = {
  key: 'status',
  label: 'Standing or planned',
  unit: 'choice',
  help: 'Whether it stands there today or is only drawn.',
  choices: [
    { value: 'existing', label: 'stands today' },
    { value: 'planned', label: 'planned' },
  ],
};
export const speciesField: PropertyField = {
  key: 'species',
  label: 'Species',
  unit: 'botanicalName',
  help: 'Botanical name from the catalogue; without one it does not grow and keeps its leaves all year.',
};
export const alsoSpeciesField: PropertyField = {
  key: 'alsoSpecies',
  label: 'Mixed with',
  unit: 'botanicalNames',
  help: 'What else grows in it. How it grows, how wide it is and how much daylight shows through stay those of the species above.',
};
export const measuredYearField = yearField(
  'measuredYear',
  'Height measured in',
  'The year in which it had this height; empty: the year the plan starts.',
);
export const plantedYearField = yearField(
  'plantedYear',
  'Planted in',
  'The year of planting; the height is then the height at planting, unless a year of measuring is given.',
);
export const plantedHeightField: PropertyField = {
  key: 'plantedHeightM',
  label: 'Height at planting',
  unit: 'm',
  help: 'How tall it was when it was planted, where the height above was measured later; how well it grows is told from both.',
  min: 0,
  aboveMin: true,
  max: 20,
  detail: true,
};
export const removedYearField = yearField(
  'removedYear',
  'Removed in',
  'From this year on it is gone; try what happens if the neighbour fells it.',
);
export const varietyField: PropertyField = {
  key: 'variety',
  label: 'Variety',
  unit: 'text',
  help: 'The variety, for plant lists and labels.',
};
export const leafAreaDensityField: PropertyField = {
  key: 'leafAreaDensityM2M3',
  label: 'Leaf area in a cubic metre',
  unit: 'm2/m3',
  help: 'Square metres of leaf in each cubic metre of foliage, in full leaf; empty: as the species has it, otherwise 0.5.',
  min: 0,
  detail: true,
};
