/** What each answer depends on: a change of anything else (a name that is typed, a month that is chosen) starts nothing. */
import { lightField } from './light-field.ts';
import type { AppState } from './model.ts';

/** What the engines see besides the features and the ground, which may lie by heights among them. */
const setting = (state: AppState) => [
  state.document.site.wind,
  state.document.site.growingSeason,
  state.document.site.sunshineShareByMonth,
  state.document.site.baseYear,
  state.document.site.species,
  state.document.site.timeZone,
  state.surface,
  state.document.site.surfaceLeaves,
  state.weather,
  state.layout,
];
const grownAs = (state: AppState) => [...setting(state), state.stepped.result];
const circumstances = (state: AppState) => [...grownAs(state), state.felled];
const world = (state: AppState) => [state.document.features, state.ground, ...circumstances(state)];
/** The world at the end that is shown. */
export const shown = (state: AppState) => [...world(state), state.shownEnd];

/** The site as it says itself, whatever is supposed to be felled. */
export const asItStands = (state: AppState) => [
  state.document.features,
  state.ground,
  ...grownAs(state),
  state.shelterOptions,
];

/** What growth and shelter are stepped with. */
export const steppedKey = (state: AppState) => [
  state.document.features,
  state.document.site.shelterEffect,
  state.document.site.vigour,
  state.ground,
  ...setting(state),
  state.felled,
  state.shelterOptions,
];

const lightSetting = (state: AppState) => [
  state.shownEnd,
  state.year,
  state.layer,
  state.cellWantedM,
  lightField(state) ?? null,
];
export const lightKey = (state: AppState) => [...world(state), ...lightSetting(state)];
/** All that the light depends on but the ground and what stands on it. */
export const lightKeyBesideFeatures = (state: AppState) => [...circumstances(state), ...lightSetting(state)];
const shelterSetting = (state: AppState) => [
  state.shownEnd,
  state.shelterOptions,
  state.year,
  state.cellWantedM,
];
export const shelterKey = (state: AppState) => [...world(state), ...shelterSetting(state)];
export const shelterKeyBesideFeatures = (state: AppState) => [
  ...circumstances(state),
  ...shelterSetting(state),
];
export const patchesKey = (state: AppState) => [
  ...shown(state),
  state.year,
  state.layer,
  state.document.site.lightToKeep,
];
export const yearsKey = (state: AppState) => [...shown(state), state.shelterOptions, state.layer];
export const lightEndsKey = (state: AppState) => [
  ...world(state),
  state.year,
  state.layer,
  lightField(state) ?? null,
];
export const shelterEndsKey = (state: AppState) => [...world(state), state.shelterOptions, state.year];

export type Key = readonly unknown[];

export const sameKey = (a: Key | null, b: Key): boolean =>
  a !== null && a.length === b.length && a.every((part, index) => Object.is(part, b[index]));
