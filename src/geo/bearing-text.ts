import { pointByLetters } from '../units/compass.ts';

const ANGLE =
  /^(\d+(?:\.\d+)?)\s*(?:°|d|deg|º)?\s*(?:(\d+(?:\.\d+)?)\s*(?:'|′|m|min)\s*(?:(\d+(?:\.\d+)?)\s*(?:"|″|''|s|sec))?)?$/i;

/** Degrees of "35", "35.5", "35°30'", "35d30m15s"; null when the text is no angle. */
function angleFromText(text: string): number | null {
  const match = ANGLE.exec(text.trim());
  if (!match) return null;
  const minutes = Number(match[2] ?? 0);
  const seconds = Number(match[3] ?? 0);
  if (minutes >= 60 || seconds >= 60) return null;
  return Number(match[1]) + minutes / 60 + seconds / 3600;
}

/**
 * A bearing as people write it, in degrees clockwise from the north it was read against: "215", "35°30'",
 * quadrants "N35E" and "S 10°20' W", compass points "NE" or "SSW". Null when it cannot be read or is out of range.
 */
export function bearingFromText(text: string): number | null {
  const tidy = text.trim().replace(/\s+/g, ' ');
  const point = pointByLetters(tidy);
  if (point) return point.azimuthDeg;
  const quadrant = /^([NS])\s*(.+?)\s*([EW])$/i.exec(tidy);
  if (quadrant) {
    const angleDeg = angleFromText(quadrant[2]);
    if (angleDeg === null || angleDeg > 90) return null;
    const north = quadrant[1].toUpperCase() === 'N';
    const east = quadrant[3].toUpperCase() === 'E';
    if (north) return east ? angleDeg : (360 - angleDeg) % 360;
    return east ? 180 - angleDeg : 180 + angleDeg;
  }
  const angleDeg = angleFromText(tidy);
  return angleDeg === null || angleDeg > 360 ? null : angleDeg % 360;
}
