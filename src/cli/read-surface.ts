import type { Frame } from '../geo/frame.ts';
import type { JobRunner } from '../jobs/messages.ts';
import type { Grid } from '../numeric/grid.ts';
import { terrainBox } from '../scene/site-ground.ts';
import { surfaceProblem } from '../scene/surface-facts.ts';
import { surfaceWithoutTerrain } from '../site/checks/site-record.ts';
import { BadInputError } from '../units/bad-input.ts';
import { readBytes, type SiteOnDisk } from './read-files.ts';

export interface SiteSurface {
  readonly surface: Grid | null;
  /** What deserves a look, in a sentence. */
  readonly problem: string | null;
}

/**
 * The tops of what stands around, from the site's surface file where it names one.
 * @param ground as the terrain file gives it
 * @throws BadInputError where the file cannot be what is asked for.
 */
export async function readSurfaceOf(
  { document, fileName, pathOf }: SiteOnDisk,
  frame: Frame,
  ground: Grid,
  runner: JobRunner,
): Promise<SiteSurface> {
  const { surfaceFile, terrainFile } = document.site;
  if (!surfaceFile) return { surface: null, problem: null };
  if (!terrainFile) throw new BadInputError(`${fileName}: ${surfaceWithoutTerrain(surfaceFile)}`);
  const named = `${fileName}: site.surfaceFile is ${JSON.stringify(surfaceFile)}`;
  const { ground: surface } = await runner.run('ground-file', {
    fileName: surfaceFile,
    bytes: readBytes(pathOf(surfaceFile), named).buffer,
    frame,
    box: terrainBox(document, frame),
  });
  return { surface, problem: surfaceProblem(surface, ground, surfaceFile, terrainFile) };
}
