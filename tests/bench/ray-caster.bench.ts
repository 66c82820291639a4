/**
 * The engine's rays beside those of a general-purpose ray caster (three-mesh-bvh on meshes of three) over the same
 * land and the same 200 opaque crowns on 0.81 ha: one thread, one run, seeded. A ray of the engine is one cell towards
 * one direction of sun or sky, and it brings the metres of foliage on its way, where the caster says only whether
 * something is hit.
 */
import { computeLight } from '../../src/light/compute-light.ts';
import { lightPlan } from '../../src/light/light-plan.ts';
import { cellCount, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { meshCaster, opaqueCrowns } from '../reference/mesh-caster.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { orchard, SORREL_SIZED } from './orchard.ts';

const RUNS = 5;
const CAST_RAYS = 200_000;

export const title =
  'Rays: the engine and a general ray caster, 200 opaque crowns on 0.81 ha at 0.5 m, one thread';

export function bench(): Record<string, string | number>[] {
  const request = orchard();
  const scene = opaqueCrowns(request.scene);
  const { grid, readingHeightM } = request;
  const { sun, sky } = lightPlan(scene);
  const engineRays = cellCount(grid) * (sun.length + sky.length);
  const engineS = best(() => runToEnd(computeLight({ scene, grid, readingHeightM })));

  const builtAt = performance.now();
  const caster = meshCaster(scene);
  const buildS = (performance.now() - builtAt) / 1000;
  const random = seededRandom(4);
  const { moments } = plainYear(scene);
  const rays = Array.from({ length: CAST_RAYS }, () => {
    const x = random() * SORREL_SIZED.sideM;
    const y = random() * SORREL_SIZED.sideM;
    const { altitudeRad, azimuthRad } = moments[Math.floor(random() * moments.length)];
    const a = azimuthRad - scene.convergenceRad;
    const flat = Math.cos(altitudeRad);
    const u = [Math.sin(a) * flat, Math.cos(a) * flat, Math.sin(altitudeRad)] as const;
    return { x, y, z: sampleGrid(scene.ground, x, y) + readingHeightM, u };
  });
  let hits = 0;
  const casterS = best(() => {
    hits = 0;
    for (const { x, y, z, u } of rays) if (caster.blocked(x, y, z, u[0], u[1], u[2])) hits++;
  });

  const engineRate = engineRays / engineS;
  const row = (what: string, count: number, bestS: number, note: string) => ({
    what,
    rays: count,
    'best s': Number(bestS.toFixed(3)),
    'million rays/s': Number((count / bestS / 1e6).toPrecision(3)),
    'engine : this': Number((engineRate / (count / bestS)).toPrecision(3)),
    note,
  });
  return [
    row('engine', engineRays, engineS, `${sun.length} sun and ${sky.length} sky directions`),
    row(
      'three-mesh-bvh',
      CAST_RAYS,
      casterS,
      `${caster.triangles} triangles, built in ${buildS.toFixed(2)} s; ${((100 * hits) / CAST_RAYS).toFixed(0)} % hit`,
    ),
  ];
}

/** Seconds; the first run warms up. */
function best(work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run <= RUNS; run++) {
    const start = performance.now();
    work();
    if (run > 0) least = Math.min(least, performance.now() - start);
  }
  return least / 1000;
}
