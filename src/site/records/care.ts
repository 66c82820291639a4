import { z } from 'zod';
import { calendarYear, positiveM, share } from './shared.ts';

/** When: in the winter before the season of `year`; again every so many years, up to a last one. */
const when = {
  year: calendarYear,
  everyYears: z.number().int().min(1).max(200).optional(),
  lastYear: calendarYear.optional(),
};
/** What ends it is not done again. */
const once = { everyYears: z.undefined().optional(), lastYear: z.undefined().optional() };
const toHeight = { ...when, heightM: positiveM };

/**
 * What is done to a tree, belt or block in some winter. `pollard` at a height, `coppice` to the stump, `raiseCrown` and
 * `cutTo` to a height, `thin` by a share of the foliage; `replace` fells it and plants another, of the same species
 * unless another is named; `die` is the end of it.
 */
const careEvent = z.discriminatedUnion(
  'what',
  [
    z.looseObject({ what: z.literal('pollard'), ...toHeight }),
    z.looseObject({ what: z.literal('coppice'), ...when }),
    z.looseObject({ what: z.literal('raiseCrown'), ...toHeight }),
    z.looseObject({ what: z.literal('cutTo'), ...toHeight }),
    z.looseObject({ what: z.literal('thin'), ...when, share }),
    z.looseObject({ what: z.literal('replace'), ...when, species: z.string().optional() }),
    z.looseObject({ what: z.literal('die'), ...when, ...once }),
  ],
  { error: 'one of pollard, coppice, raiseCrown, cutTo, thin, replace and die' },
);
export type CareRecord = z.infer<typeof careEvent>;

export const care = z.array(careEvent).optional();
