/** Twenty invented fields of ten hectares on rolling land, with hedges between them, woods and trees. Seeded. */
import { gridCovering } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { at } from '../years/years-site.ts';

/** Sides of a field of 10 ha, and of a path's width between two. */
const SIDE_M = 316;
const STEP_M = 324;
const COLUMNS = 5;
const FIELDS = 20;
const TREES_A_FIELD = 5;
/** Ground as a survey from the air has it. */
const GROUND_CELL_M = 2;
const AROUND_M = 700;

export interface TwentyFields {
  readonly document: SiteDocument;
  readonly options: SceneOptions;
  readonly fields: readonly FieldFeature[];
}

export function twentyFields(): TwentyFields {
  const random = seededRandom(20);
  const features: SiteFeature[] = [];
  const add = (id: string, geometry: unknown, properties: object) =>
    features.push({ type: 'Feature', id, geometry, properties } as unknown as SiteFeature);
  const corner = (k: number) => [STEP_M * (k % COLUMNS), STEP_M * Math.floor(k / COLUMNS)] as const;
  for (let k = 0; k < FIELDS; k++) {
    const [x, y] = corner(k);
    const box = [at(x, y), at(x + SIDE_M, y), at(x + SIDE_M, y + SIDE_M), at(x, y + SIDE_M), at(x, y)];
    add(`field-${k}`, { type: 'Polygon', coordinates: [box] }, { kind: 'field', name: `Field ${k + 1}` });
    const westEdge = [at(x - 4, y), at(x - 4, y + SIDE_M)];
    add(
      `edge-${k}`,
      { type: 'LineString', coordinates: westEdge },
      {
        kind: 'belt',
        status: 'existing',
        heightM: 3 + 15 * random(),
        widthM: 4,
        ...(k % 4 === 0 ? { owner: 'a neighbour' } : {}),
      },
    );
    const through = y + SIDE_M * (0.3 + 0.4 * random());
    add(
      `planned-${k}`,
      { type: 'LineString', coordinates: [at(x + 10, through), at(x + SIDE_M - 10, through)] },
      { kind: 'belt', status: 'planned', species: 'Alnus cordata', plantedYear: 2027 },
    );
    for (let t = 0; t < TREES_A_FIELD; t++)
      add(
        `tree-${k}-${t}`,
        { type: 'Point', coordinates: at(x + SIDE_M * random(), y + SIDE_M * random()) },
        { kind: 'tree', status: 'existing', species: 'Juglans regia', heightM: 4 + 8 * random() },
      );
  }
  const sectors = Array.from({ length: 16 }, (_, k) => ({
    fromDeg: 22.5 * k,
    frequency: (1 + Math.cos((Math.PI * (22.5 * k - 250)) / 180)) / 16,
    meanSpeedMps: 4.5,
  }));
  const document: SiteDocument = {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Twenty fields',
      timeZone: 'America/Halifax',
      baseYear: 2027,
      wind: { heightM: 10, sectors },
    },
    features,
  };
  const frame = siteFrame(document);
  const halfM = [STEP_M * COLUMNS, STEP_M * Math.ceil(FIELDS / COLUMNS)].map((side) => side / 2 + AROUND_M);
  const spec = gridCovering(
    { west: -halfM[0], east: halfM[0], south: -halfM[1], north: halfM[1] },
    GROUND_CELL_M,
  );
  const values = Float32Array.from({ length: spec.columns * spec.rows }, (_, cell) => {
    const [x, y] = [cell % spec.columns, Math.floor(cell / spec.columns)];
    return 60 + 25 * Math.sin(x / 190) * Math.cos(y / 160) + 8 * Math.sin((x + 2 * y) / 90);
  });
  return {
    document,
    options: { year: 0, layout: null, pace: 'usual', frame, ground: { ...spec, values }, weather: null },
    fields: features.filter(({ properties }) => properties.kind === 'field') as FieldFeature[],
  };
}
