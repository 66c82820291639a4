import type { LonLat } from '../geo/frame.ts';
import { azimuthDeg, destination, distanceM } from '../geo/geodesic.ts';
import type { Drawn } from '../site/actions/add-feature.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { Stake, StakePlan } from './stake-plan.ts';

/** Where the tip of a shadow was seen. */
export interface ShadowReading {
  readonly id: FeatureId;
  /** YYYY-MM-DD and HH:MM on the clocks of the site. */
  readonly date: string;
  readonly time: string;
  readonly lonLat: LonLat;
  readonly alongM: number | null;
}

/** The readings of one thing's shadow that the site keeps, by day and time. Those without a day and a time say nothing. */
export function shadowReadings(document: SiteDocument, id: FeatureId): ShadowReading[] {
  return featuresOfKind(document.features, 'measure')
    .flatMap((feature): ShadowReading[] => {
      const { quantity, date, time, of, alongM } = feature.properties;
      if (quantity !== 'shadow' || !date || !time || String(of) !== String(id)) return [];
      const [lon, lat] = feature.geometry.coordinates;
      return [{ id: feature.id, date: date.slice(0, 10), time, lonLat: [lon, lat], alongM: alongM ?? null }];
    })
    .sort((a, b) => `${a.date} ${a.time}`.localeCompare(`${b.date} ${b.time}`));
}

/** How the place of the tip was taken: from its stake, or by two tapes from the ends of the line. */
export type SeenAt =
  | { readonly by: 'stake'; readonly beyondM: number; readonly rightM: number }
  | { readonly by: 'tapes'; readonly fromAM: number; readonly fromBM: number };

const awayDeg = (stake: Stake): number => stake.sunAzimuthDeg + 180;

/**
 * The place of the tip. Tapes lie on the slope: they are made level in the proportion that they are at the stake.
 * @throws BadInputError when two tapes of these lengths do not meet.
 */
export function placeSeen({ line }: StakePlan, stake: Stake, seen: SeenAt): LonLat {
  if (seen.by === 'stake') {
    const turnDeg = (Math.atan2(seen.rightM, seen.beyondM) * 180) / Math.PI;
    return destination(stake.lonLat, awayDeg(stake) + turnDeg, Math.hypot(seen.beyondM, seen.rightM));
  }
  const level = (tapeM: number, { levelM, tapeM: whole }: Stake['fromA']) =>
    whole > 0 ? (tapeM * levelM) / whole : tapeM;
  const a = level(seen.fromAM, stake.fromA);
  const b = level(seen.fromBM, stake.fromB);
  const baseM = line.length.levelM;
  const alongM = (a * a - b * b + baseM * baseM) / (2 * baseM);
  const square = a * a - alongM * alongM;
  if (!(square >= 0))
    throw new BadInputError(
      `Tapes of ${seen.fromAM} m from ${line.a.letter} and ${seen.fromBM} m from ${line.b.letter} do not meet: the two are ${baseM.toFixed(2)} m apart.`,
    );
  const across = Math.sqrt(square) * (stake.side === 'left' ? -1 : 1);
  const turnDeg = (Math.atan2(across, alongM) * 180) / Math.PI;
  return destination(
    line.a.lonLat,
    azimuthDeg(line.a.lonLat, line.b.lonLat) + turnDeg,
    Math.hypot(across, alongM),
  );
}

/** A place seen from a stake away from the sun: metres beyond it (short below zero) and to its right (left below zero). */
function missOf(stake: Stake, place: LonLat): { beyondM: number; rightM: number } {
  const lengthM = distanceM(stake.lonLat, place);
  const turnRad = lengthM === 0 ? 0 : ((azimuthDeg(stake.lonLat, place) - awayDeg(stake)) * Math.PI) / 180;
  return { beyondM: lengthM * Math.cos(turnRad), rightM: lengthM * Math.sin(turnRad) };
}

const centimetres = (metres: number): number => Math.round(metres * 100) / 100 + 0;

/** The reading as the site keeps it: a point where the tip was seen. */
export function readingToKeep(plan: StakePlan, stake: Stake, time: string, seen: SeenAt): Drawn {
  const [lon, lat] = placeSeen(plan, stake, seen);
  const miss = missOf(stake, [lon, lat]);
  const { a, b } = plan.line;
  return {
    properties: {
      kind: 'measure',
      name: `Shadow of ${plan.thing.label}, ${time}`,
      quantity: 'shadow',
      value: centimetres(miss.beyondM),
      date: plan.date,
      time,
      method:
        seen.by === 'stake'
          ? `from the stake of ${stake.time}`
          : `tapes of ${centimetres(seen.fromAM)} m and ${centimetres(seen.fromBM)} m from the ${a.words} (${a.letter}) and the ${b.words} (${b.letter})`,
      of: plan.thing.id,
      ...(plan.alongM === null ? {} : { alongM: centimetres(plan.alongM) }),
      asideM: centimetres(miss.rightM),
    },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  };
}
