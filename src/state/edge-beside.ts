import type { StoreApi } from 'zustand/vanilla';
import { edgeNeeds } from '../choose/edge-needs.ts';
import { isEdge } from '../choose/edge-setting.ts';
import type { EdgeProfile } from '../choose/edge-types.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runEdgeProfile } from '../jobs/run-edge-profile.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import { BadInputError } from '../units/bad-input.ts';
import { shown } from './answer-keys.ts';
import { fieldsOf } from './area-figures.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { App, AppState } from './model.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

/** A hand that moves rests this long before anything starts. */
const REST_MS = 300;

const key = (state: AppState) => [
  ...shown(state),
  state.shelterOptions,
  state.layer,
  state.document.site.lightBands,
  state.document.site.choosing,
  state.edgeAsked,
];

/** Keeps what lies beside the chosen edge current, once it was asked for and while it is chosen. */
export const keepEdgeProfile = (store: StoreApi<App>, runner: JobRunner): KeptAnswers =>
  keepWhileOpen<EdgeProfile>(
    store,
    { read: ({ edgeProfile }) => edgeProfile, write: (edgeProfile) => ({ edgeProfile }), keyOf: key },
    (state) => {
      const { document, layout, ground, edgeAsked, selection } = state;
      const edge = chosenFeatures(document, layout).find(({ id }) => id === edgeAsked);
      if (!ground || !edge || edgeAsked !== selection || !isEdge(edge)) return null;
      const request = {
        document,
        options: sceneOptions(state, ground),
        edge,
        fields: fieldsOf(document),
        reading: {
          readingHeightM: WIND_READING_HEIGHT_M,
          galeMps: GALE_MPS,
          options: state.shelterOptions,
        },
        lightHeightM: READING_HEIGHT_M[state.layer],
        needs: edgeNeeds(document.site),
      };
      return [
        async (signal, onProgress) => {
          const found = await runEdgeProfile(runner, request, { signal, onProgress });
          if (found && found.sides.length > 0) return found;
          throw new BadInputError('No field lies beside it within its shelter in year 0 or 20.');
        },
      ];
    },
    REST_MS,
  );
