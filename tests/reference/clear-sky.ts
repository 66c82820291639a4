/** Published clear-sky formulas, as an outside check on the engine's own clear day. Angles in degrees, W m-2. */
const RAD = Math.PI / 180;

/** Relative air mass at an apparent altitude: Kasten & Young 1989. */
export const airMass = (altitudeDeg: number): number =>
  1 / (Math.sin(altitudeDeg * RAD) + 0.50572 * (altitudeDeg + 6.07995) ** -1.6364);

/** Global radiation under a clear sky: Haurwitz 1945. */
export function haurwitz(altitudeDeg: number): number {
  const cosZenith = Math.sin(altitudeDeg * RAD);
  return cosZenith > 0 ? 1098 * cosZenith * Math.exp(-0.059 / cosZenith) : 0;
}

/** Global, beam (normal) and diffuse radiation under a clear sky: Ineichen & Perez 2002. */
export function ineichen(
  altitudeDeg: number,
  mass: number,
  turbidity: number,
  elevationM: number,
  extraterrestrial: number,
): { global: number; beam: number; diffuse: number } {
  const cosZenith = Math.sin(altitudeDeg * RAD);
  const fh1 = Math.exp(-elevationM / 8000);
  const fh2 = Math.exp(-elevationM / 1250);
  const cg1 = 5.09e-5 * elevationM + 0.868;
  const cg2 = 3.92e-5 * elevationM + 0.0387;
  const global = cg1 * extraterrestrial * cosZenith * Math.exp(-cg2 * mass * (fh1 + fh2 * (turbidity - 1)));
  const b = 0.664 + 0.163 / fh1;
  const beam = Math.min(
    extraterrestrial * b * Math.exp(-0.09 * mass * (turbidity - 1)),
    (global * (1 - (0.1 - 0.2 * Math.exp(-turbidity)) / (0.1 + 0.882 / fh1))) / cosZenith,
  );
  return { global, beam, diffuse: global - beam * cosZenith };
}
