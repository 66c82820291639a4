import { formatArea, formatLength } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import type { SketchMeasures } from './sketch.ts';

/** 12.40 m under 20 m, so that a tenth of a metre's step shows; otherwise as everywhere. */
const fine = (lengthM: number, units: UnitSystem): string =>
  units === 'metric' && lengthM < 20 ? `${lengthM.toFixed(2)} m` : formatLength(lengthM, units);

/** 045° (north-east), from true north. */
const bearingWords = (bearingDeg: number): string => {
  const whole = Math.round(bearingDeg) % 360;
  return `${String(whole).padStart(3, '0')}° (${fineDirectionWord(bearingDeg)})`;
};

/** The measures of a sketch as rows to be read beside the pointer. */
export function measureRows(
  measures: SketchMeasures,
  units: UnitSystem,
): { readonly label: string; readonly value: string }[] {
  const { fromLastM, bearingDeg, fromStartM, lastSideM, lengthM, areaM2 } = measures;
  if (fromLastM === null || fromStartM === null || lengthM === null) return [];
  const bearing = bearingDeg === null ? '' : ` at ${bearingWords(bearingDeg)}`;
  // A finger leaves the cross on the point it has just placed: then the side to it is what it wants to know.
  const onLast = fromLastM < 0.005 && lastSideM !== null;
  const rows = [
    onLast
      ? { label: 'Last side', value: fine(lastSideM, units) }
      : { label: 'From the last point', value: `${fine(fromLastM, units)}${bearing}` },
  ];
  if (lengthM > fromLastM + 0.005) {
    rows.push({ label: 'From the start', value: fine(fromStartM, units) });
    rows.push({ label: areaM2 === null ? 'Length so far' : 'Sides so far', value: fine(lengthM, units) });
  }
  if (areaM2 !== null) rows.push({ label: 'Area', value: formatArea(areaM2, units) });
  return rows;
}

/** How far something has been moved: "3.20 m at 045° (north-east)". */
export function moveWords(eastM: number, northM: number, units: UnitSystem): string {
  const lengthM = Math.hypot(eastM, northM);
  if (lengthM < 0.005) return 'not moved yet';
  const bearingDeg = ((Math.atan2(eastM, northM) * 180) / Math.PI + 360) % 360;
  return `${fine(lengthM, units)} at ${bearingWords(bearingDeg)}`;
}
