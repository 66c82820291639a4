import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { coldAirScene } from '../choose/cold-air.ts';
import { coldFigures } from '../choose/cold-figures.ts';
import { type ColdField, coldRanks } from '../choose/cold-words.ts';
import { writeGeoTiff } from '../geo/formats/geotiff-write.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import { siteFrosts } from '../scene/site-frosts.ts';
import { pathFromCaller } from './caller-path.ts';
import { type ColdPage, coldJson, coldText, METRIC } from './cold-text.ts';
import { type CommonOptions, layoutOption, threadsOption, yearOption } from './common-options.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';

interface ColdOptions
  extends Pick<CommonOptions, 'year' | 'field' | 'layout' | 'json' | 'threads' | 'quiet'> {
  readonly tif?: string;
}

/** `leeglade cold`: which field holds most cold air on a still night, and the frosts of real years. */
export function addColdCommand(program: Command): void {
  program
    .command('cold')
    .description('which field holds most cold air on a still night, and last and first frosts of real years')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(yearOption('years after planting: what stands then holds cold air back').default(0))
    .option('--field <NAME>', 'one field instead of all')
    .addOption(layoutOption())
    .addOption(
      new Option('--tif <FILE>', 'writes the depth of cold air as a GeoTIFF as well').argParser(
        pathFromCaller,
      ),
    )
    .option('--json', 'print the answer as JSON')
    .addOption(threadsOption())
    .option('--quiet', 'no progress')
    .action(cold);
}

async function cold(path: string, options: ColdOptions): Promise<void> {
  const { site, frame, fields, scene, runner } = await prepare(path, {
    ...options,
    cell: 10,
    height: 0,
    out: '.',
  });
  try {
    const { document } = site;
    const air = await runner.run('cold-air', coldAirScene(document, scene), {
      onProgress: progressLine('cold air', options.quiet === true),
    });
    const ranked = fields.map((field): ColdField => {
      const outline = field.geometry.coordinates.map((ring) => ring.map(([lon, lat]) => [lon, lat] as const));
      return {
        id: field.id,
        name: field.properties.name ?? String(field.id),
        areaM2: polygonAreaM2(outline),
        cold: coldFigures(
          air,
          outline.map((ring) => ringToLocal(frame, ring)),
        ),
      };
    });
    if (options.tif !== undefined)
      writeFileSync(
        options.tif,
        writeGeoTiff(
          [
            { name: 'depth by the land alone, m', values: air.depthM },
            { name: `depth with what stands in year ${scene.year}, m`, values: air.dammedDepthM },
          ],
          air.grid,
          frame,
        ),
      );
    const page: ColdPage = {
      siteName: document.site.name,
      year: scene.year,
      layout: scene.layout,
      cellM: air.grid.cellM,
      terrainCellM: document.site.terrainFile ? scene.ground.cellM : null,
      ranks: coldRanks(ranked, METRIC),
      frosts: siteFrosts(document, scene.weather),
      written: options.tif ?? null,
    };
    process.stdout.write(options.json ? coldJson(page) : coldText(page));
  } finally {
    runner.dispose();
  }
}
