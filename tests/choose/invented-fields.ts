import type { FieldFound, FieldStateKey, StateFigures } from '../../src/choose/choose-types.ts';
import { FIELD_STATES } from '../../src/choose/choose-types.ts';

export const STATE: StateFigures = {
  windCutGrowing: 0.3,
  windCutRest: 0.25,
  galeHours: 60,
  sunHoursGrowing: 2000,
  sunHoursMidwinter: 200,
  lightGrowing: 0.9,
  lightMidwinter: 0.85,
  lightEnoughShare: 1,
  shelterEnoughShare: 0.5,
  bothShare: 0.5,
};

type Given = Partial<Omit<FieldFound, 'ground' | 'states'>> & {
  readonly ground?: Partial<Omit<FieldFound['ground'], 'cold'>> & {
    readonly cold?: Partial<FieldFound['ground']['cold']>;
  };
  /** The same in every state. */
  readonly state?: Partial<StateFigures>;
  readonly byState?: Partial<Record<FieldStateKey, Partial<StateFigures>>>;
};

/** A field of a hectare whose figures are made up; nothing of somebody else's stands beside it. */
export function inventedField(name: string, { ground, state, byState, ...given }: Given = {}): FieldFound {
  return {
    id: name,
    name,
    grid: { columns: 1, rows: 1, cellM: 100, westM: 0, northM: 100 },
    mask: Uint8Array.of(1),
    maps: new Map(),
    withoutEdges: [],
    withoutOwners: [],
    shelteredFrom: { slow: 12, usual: 9, fast: 7 },
    beltNeededM: 60,
    ...given,
    ground: {
      areaM2: 10_000,
      slopeDeg: 4,
      aspectDeg: 180,
      horizonSumDeg: 10,
      wetness: 6,
      toAccessM: 30,
      toWaterM: null,
      ...ground,
      cold: {
        meanDepthM: 0,
        heldDepthM: 0,
        deepestM: 0,
        hollowShare: 0,
        dammedShare: 0,
        drainsThroughM2: 0,
        ...ground?.cold,
      },
    },
    states: new Map(FIELD_STATES.map((key) => [key, { ...STATE, ...state, ...byState?.[key] }])),
  };
}
