import { cutWith, layCover } from '../../src/belts/propose-cover.ts';
import { proposeSearch } from '../../src/belts/propose-job.ts';
import { searchFor } from '../../src/belts/propose-setting.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { oddField, settingOf } from '../belts/proposed-field.ts';

export const title =
  'Belts proposed for an odd-shaped field: one more belt tried by the search and by the shelter engine';

const REPEATS = 40;

function msOf(work: () => void, repeats: number): number {
  const start = performance.now();
  for (let i = 0; i < repeats; i++) work();
  return (performance.now() - start) / repeats;
}

export function bench(): Record<string, string | number>[] {
  return [5, 12, 20].map((year) => {
    const setting = settingOf(oddField(), { year });
    const { request } = searchFor(setting, year, ['land', 'shade'], 0.6);
    const { shelter, belts, mask } = request;
    const start = performance.now();
    const cover = runToEnd(layCover(shelter, belts, mask, 'growing'));
    const layMs = performance.now() - start;
    let one = 0;
    const quick = () => void cutWith(cover, cover.standing, cover.belts[one++ % belts.length]);
    const scene = (more: number) => ({
      ...shelter.scene,
      barriers: [...shelter.scene.barriers, belts[more]],
    });
    const plain = () => void runToEnd(computeShelter({ ...shelter, scene: scene(one++ % belts.length) }));
    msOf(quick, REPEATS);
    const quickMs = msOf(quick, 10 * REPEATS);
    const plainMs = msOf(plain, REPEATS);
    const begun = performance.now();
    const { choices } = runToEnd(proposeSearch(request));
    return {
      year,
      'belts to choose from': belts.length,
      'laying all ms': Math.round(layMs),
      'one tried µs': Math.round(1000 * quickMs),
      'by the engine µs': Math.round(1000 * plainMs),
      'engine : search': Math.round(plainMs / quickMs),
      'search, two aims ms': Math.round(performance.now() - begun),
      'belts found': choices[0].chosen.length,
    };
  });
}
