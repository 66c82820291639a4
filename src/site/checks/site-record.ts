import { layoutNames } from '../layout-names.ts';
import type { SiteCheck, SiteProblem } from './problem.ts';

/** Files that are not at hand, winds that blow never, layouts without a name in the list. */
export const checkSiteRecord: SiteCheck = (document, { filesAtHand }) => {
  const problems: SiteProblem[] = [];
  const { site } = document;
  if (filesAtHand)
    for (const { member, file } of filesOf(document))
      if (!filesAtHand.includes(file))
        problems.push({
          level: 'problem',
          sentence: `site.${member} is ${JSON.stringify(file)}, which is not at hand; expected the file beside the site file.`,
        });
  if (site.surfaceFile && !site.terrainFile)
    problems.push({ level: 'problem', sentence: surfaceWithoutTerrain(site.surfaceFile) });
  if (site.wind && !site.wind.sectors && !site.weatherFile)
    problems.push({
      level: 'problem',
      sentence:
        'site.wind has no sectors and there is no site.weatherFile to take them from; expected one of them, so an even wind is used.',
    });
  if (site.wind?.sectors) {
    const sum = site.wind.sectors.reduce((total, sector) => total + sector.frequency, 0);
    if (sum === 0)
      problems.push({
        level: 'problem',
        sentence:
          'site.wind.sectors have no frequency above 0; expected the share of time of each direction.',
      });
  }
  if (site.spotLevels && site.spotLevels.length > 0 && site.spotLevels.length < 3)
    problems.push({
      level: 'problem',
      sentence: `site.spotLevels is a list of ${site.spotLevels.length}; expected at least 3, so the plane or flat ground is used.`,
    });
  const listed = new Set((site.layouts ?? []).map((layout) => layout.name));
  for (const name of layoutNames(document))
    if (!listed.has(name))
      problems.push({
        level: 'note',
        sentence: `site.layouts does not name ${JSON.stringify(name)}, to which features belong; expected it in the list.`,
      });
  return problems;
};

/** A surface says how high things stand only beside the terrain. */
export const surfaceWithoutTerrain = (surfaceFile: string): string =>
  `site.surfaceFile is ${JSON.stringify(surfaceFile)}, but site.terrainFile names none; expected terrain on the same datum, above which its woods stand.`;

/** Every file the site refers to, with the member that names it. */
export function filesOf({ site }: Parameters<SiteCheck>[0]): { member: string; file: string }[] {
  const named = [
    { member: 'terrainFile', file: site.terrainFile },
    { member: 'surfaceFile', file: site.surfaceFile },
    { member: 'weatherFile', file: site.weatherFile },
    ...(site.pictures ?? []).map((picture, i) => ({ member: `pictures[${i}].file`, file: picture.file })),
  ];
  // A picture given as a data address is in the site file itself.
  return named.flatMap(({ member, file }) => (file && !file.startsWith('data:') ? [{ member, file }] : []));
}
