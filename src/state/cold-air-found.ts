import type { StoreApi } from 'zustand/vanilla';
import { type ColdAir, coldAirScene } from '../choose/cold-air.ts';
import { coldFigures, HOLLOW_M } from '../choose/cold-figures.ts';
import { type ColdRank, coldRanks } from '../choose/cold-words.ts';
import { type FlowLine, flowLines } from '../geo/flow-lines.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { shown } from './answer-keys.ts';
import { areaOfFeatureM2, fieldsOf } from './area-figures.ts';
import { formatLength, landIn, landUnit } from './format-measure.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { App, AppState, UnitSystem } from './model.ts';
import { sceneOptions } from './scene-options.ts';

/** A hand that moves rests this long before anything starts. */
const REST_MS = 300;

/** Keeps the cold air current while its map is shown, or the ground is chosen. */
export const keepColdAir = (store: StoreApi<App>, runner: JobRunner): KeptAnswers =>
  keepWhileOpen<ColdAir>(
    store,
    {
      read: ({ coldAir }) => coldAir,
      write: (coldAir) => ({ coldAir }),
      keyOf: (state) => [...shown(state), state.year],
    },
    (state) => {
      const { document, ground, picture, step } = state;
      const open = picture === 'cold-air' || (step === 'ground' && fieldsOf(document).length > 0);
      if (!ground || !open) return null;
      return [
        (signal, onProgress) =>
          runner.run('cold-air', coldAirScene(document, sceneOptions(state, ground)), { signal, onProgress }),
      ];
    },
    REST_MS,
  );

let lastRanks: { readonly of: readonly unknown[]; readonly ranks: readonly ColdRank[] } | null = null;

/** The fields by their cold air, in words; empty while nothing is known. The same list until something changes. */
export function coldRanksFound(state: AppState): readonly ColdRank[] {
  const { coldAir, document, frame, unitSystem } = state;
  const of = [coldAir.result, document.features, frame, unitSystem];
  if (!lastRanks?.of.every((each, k) => each === of[k]))
    lastRanks = { of, ranks: coldAir.result ? ranksOf(state, coldAir.result) : [] };
  return lastRanks.ranks;
}

const ranksOf = ({ document, frame, unitSystem }: AppState, air: ColdAir): ColdRank[] =>
  coldRanks(
    fieldsOf(document).map((field) => ({
      id: field.id,
      name: field.properties.name ?? 'The field without a name',
      areaM2: areaOfFeatureM2(field),
      cold: coldFigures(
        air,
        field.geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
      ),
    })),
    {
      depth: (depthM) => formatLength(depthM, unitSystem),
      area: (areaM2) => roughArea(areaM2, unitSystem),
    },
  );

/** To two figures: what drains where is not known closer. */
const roughArea = (areaM2: number, units: UnitSystem): string =>
  `${Number(landIn(areaM2, units).toPrecision(2))} ${landUnit(units)}`;

/** Air of less ground is not drawn, m2; nor of less than this share of all the ground. */
const LEAST_M2 = 5_000;
const LEAST_SHARE = 0.004;

const flows = new WeakMap<ColdAir, readonly FlowLine[]>();

/** Where cold air of much ground runs, down to where it lies. Worked out once for each answer. */
export function coldFlows(air: ColdAir): readonly FlowLine[] {
  const known = flows.get(air);
  if (known) return known;
  const { grid, dammedDepthM, air: run } = air;
  const allM2 = dammedDepthM.length * grid.cellM ** 2;
  const made = flowLines(
    grid,
    run,
    Math.max(LEAST_M2, LEAST_SHARE * allM2),
    (cell) => dammedDepthM[cell] > HOLLOW_M,
  );
  flows.set(air, made);
  return made;
}
