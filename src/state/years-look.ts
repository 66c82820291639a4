import type { JobRunner } from '../jobs/messages.ts';
import type { WindReading } from '../jobs/run-field-cut.ts';
import { type PaceSpeeds, paceSpeeds } from '../jobs/run-step-years.ts';
import { createYearsLook } from '../jobs/run-years-look.ts';
import type { Grid } from '../numeric/grid.ts';
import { takenField } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { YearsLook } from '../years/years-look-types.ts';
import { type Key, sameKey, steppedKey } from './answer-keys.ts';
import { fieldsOf } from './area-figures.ts';
import type { Pass } from './lane.ts';
import type { AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** The field whose years are followed: the one that is taken, else the first; null where none is drawn. */
export const followedField = (document: SiteDocument): FieldFeature | null =>
  takenField(document) ?? fieldsOf(document)[0] ?? null;

/** A field of the app through the years. @param readingOf how the wind is read for the app as it is set. */
export function createYearsPasses(runner: JobRunner, readingOf: (state: AppState) => WindReading) {
  const look = createYearsLook(runner);
  let speedsAt: PaceSpeeds | null = null;
  let speedsOf: Key | null = null;

  return (state: AppState, ground: Grid, field: FieldFeature, full: boolean): readonly Pass<YearsLook>[] => {
    const { document, layout, frame, layer, shelterOptions } = state;
    const key = steppedKey(state);
    if (speedsAt === null || !sameKey(speedsOf, key)) {
      const options = { ...sceneOptions({ ...state, shownEnd: null }, ground), speeds: null };
      speedsAt = paceSpeeds(runner, { document, options, shelter: shelterOptions });
      speedsOf = key;
    }
    const request = {
      document,
      layout,
      frame,
      field,
      optionsAt: (year: number) => sceneOptions(state, ground, year),
      speedsAt,
      reading: readingOf(state),
      lightHeightM: READING_HEIGHT_M[layer],
    };
    return look(request, full).map(
      (pass): Pass<YearsLook> =>
        (signal, onProgress) =>
          pass({ signal, onProgress }),
    );
  };
}
