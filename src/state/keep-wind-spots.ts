import type { StoreApi } from 'zustand/vanilla';
import type { JobRunner } from '../jobs/messages.ts';
import { runSpotPlan, runSpotScore } from '../jobs/run-wind-spots.ts';
import { isKeptSpot } from '../windspots/kept-spots.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { App, AppState } from './model.ts';
import type { SpotPlanFound, SpotScoreFound } from './spots-found.ts';
import { spotsAsked } from './wind-spots.ts';

/** A hand that drags a tree or turns the wind rests this long before anything starts. */
const REST_MS = 120;

/** What is written down and read changes no plan; the ground follows from the rest and the terrain. */
const planKey = ({ document, layout, frame, terrain, windSpots }: AppState) =>
  windSpots
    ? [
        windSpots,
        document.site,
        layout,
        frame,
        terrain,
        ...document.features.filter((feature) => !isKeptSpot(feature)),
      ]
    : [null];

const scoreKey = ({ document, layout, frame, ground, windSpots }: AppState) => [
  windSpots?.of,
  document,
  layout,
  frame,
  ground,
];

/** Keeps the plan of the open wind spots current, and what explains their readings. */
export function keepWindSpots(store: StoreApi<App>, runner: JobRunner): KeptAnswers[] {
  const plan = keepWhileOpen<SpotPlanFound>(
    store,
    { read: ({ spotPlan }) => spotPlan, write: (spotPlan) => ({ spotPlan }), keyOf: planKey },
    (state) => {
      const asked = spotsAsked(state);
      if (!asked) return null;
      const { site, of, wish } = asked;
      return [
        async (signal, onProgress) => ({
          of,
          frame: site.frame,
          plan: await runSpotPlan(runner, { site, of, wish }, { signal, onProgress }),
        }),
      ];
    },
    REST_MS,
  );
  const score = keepWhileOpen<SpotScoreFound>(
    store,
    { read: ({ spotScore }) => spotScore, write: (spotScore) => ({ spotScore }), keyOf: scoreKey },
    (state) => {
      const asked = spotsAsked(state);
      if (!asked?.kept.some(({ reading }) => reading !== null)) return null;
      const { site, of, label, kept } = asked;
      return [
        async (signal, onProgress) => ({
          of,
          frame: site.frame,
          score: await runSpotScore(runner, { site, of, label, kept }, { signal, onProgress }),
        }),
      ];
    },
    REST_MS,
  );
  return [plan, score];
}
