/** The Beaufort scale: a wind's strength by what it does on land. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  /** Lower limit of the mean wind at 10 m, m/s (World Meteorological Organization). */
  readonly fromMps: number;
  /** What a person sees, in our own words. */
  readonly landSign: string;
}

export const BEAUFORT_SCALE: readonly BeaufortForce[] = [
  { force: 0, name: 'calm', fromMps: 0, landSign: 'smoke goes straight up' },
  { force: 1, name: 'light air', fromMps: 0.3, landSign: 'smoke drifts, a weather vane stays still' },
  { force: 2, name: 'light breeze', fromMps: 1.6, landSign: 'felt on the face, leaves rustle' },
  { force: 3, name: 'gentle breeze', fromMps: 3.4, landSign: 'twigs never rest, a light flag opens' },
  { force: 4, name: 'moderate breeze', fromMps: 5.5, landSign: 'dust and paper fly, thin branches move' },
  { force: 5, name: 'fresh breeze', fromMps: 8, landSign: 'small trees in leaf sway' },
  { force: 6, name: 'strong breeze', fromMps: 10.8, landSign: 'large branches move, wires hum' },
  { force: 7, name: 'near gale', fromMps: 13.9, landSign: 'whole trees move, walking takes effort' },
  { force: 8, name: 'gale', fromMps: 17.2, landSign: 'twigs break off, hard to walk against' },
  { force: 9, name: 'strong gale', fromMps: 20.8, landSign: 'branches come down, tiles lift' },
  { force: 10, name: 'storm', fromMps: 24.5, landSign: 'trees are uprooted, buildings suffer' },
  { force: 11, name: 'violent storm', fromMps: 28.5, landSign: 'damage far and wide' },
  { force: 12, name: 'hurricane', fromMps: 32.7, landSign: 'little is left standing' },
];

/** The force of a mean wind at 10 m. */
export function beaufortForce(speedMps: number): BeaufortForce {
  let found = BEAUFORT_SCALE[0];
  for (const force of BEAUFORT_SCALE) if (speedMps >= force.fromMps) found = force;
  return found;
}

/** Middle of a force's range, m/s; for hurricanes, which have no upper limit, the lower limit. */
export function middleSpeedMps(force: number): number {
  const own = BEAUFORT_SCALE[force];
  const next = BEAUFORT_SCALE[force + 1];
  return next ? (own.fromMps + next.fromMps) / 2 : own.fromMps;
}
