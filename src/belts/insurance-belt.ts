/** A belt that is planted against the day when somebody fells an edge that is not one's own. */
import type { Pace } from '../growth/height-curve.ts';
import { beltHabitOf } from '../plants/crown-density.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { SceneOptions } from '../scene/options.ts';
import { addFeature, type Drawn } from '../site/actions/add-feature.ts';
import { setProperties } from '../site/actions/set-properties.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import type { XY } from '../site/plane-geometry.ts';
import { BadInputError } from '../units/bad-input.ts';
import { BELT_LIKE_WORDS, type BeltLike, beltShape, isBeltLike } from './belt-shape.ts';
import { asLine, besideLine, sideOfLine } from './bridge.ts';

/** Ground left between the edge and the new belt, m: room to pass, and light from above. Common practice, no source. */
const APART_M = 4;

/** Which belt insures: one that is planned already, or a new one of a species along the edge. */
export type Insurer = { readonly beltId: FeatureId } | { readonly species: string };

/** An edge that is felled, and what is to stand in for it. */
export interface InsuranceWish {
  readonly edgeId: FeatureId;
  /** Years after the base year. */
  readonly felledInYear: number;
  /** The mean cut of the growing season's wind over the field that must be kept; null: three quarters of what the edge gives. */
  readonly leastCutShare: number | null;
  readonly insurer: Insurer;
}

/** The latest year to plant, and the shelter of the field about the felling; years after the base year. */
export interface Insurance {
  readonly wish: InsuranceWish;
  /** The mean cut that is kept: chosen, or three quarters of that with the edge. */
  readonly leastCutShare: number;
  /** Mean cut of the growing season's wind in the year of felling, nothing new planted. */
  readonly withEdge: number;
  readonly withoutEdge: number;
  /** The lowest it falls to with the belt planted at once. */
  readonly plantedAtOnce: number;
  /** Latest year to plant by how fast the belt grows; null: even planted at once it is too late. */
  readonly latest: Readonly<Record<Pace, number | null>>;
  /** True where the field keeps enough with nothing planted, even where all grows slowly. */
  readonly needless: boolean;
}

function edgeOf(document: SiteDocument, id: FeatureId): BeltLike {
  const feature = featureById(document, id);
  if (!isBeltLike(feature))
    throw new BadInputError(`${String(id)} is a ${feature.properties.kind}; expected a ${BELT_LIKE_WORDS}.`);
  return feature;
}

/** A new belt along the field's side of an edge, planted in a year after the base year. */
function drawnInsurance(
  document: SiteDocument,
  edge: BeltLike,
  species: string,
  plantedYear: number,
  options: SceneOptions,
  points: readonly XY[],
): Drawn<'belt'> {
  const shape = beltShape(document, edge, options.frame, options);
  const { widthM } = beltHabitOf(findSpecies(species, document.site.species));
  const line = shape.isArea ? nearestSide(shape.line, points) : shape.line;
  const edgeHalfM = shape.isArea ? 0 : (shape.judged?.widthM ?? 0) / 2;
  const apartM = edgeHalfM + APART_M + widthM / 2;
  return {
    properties: {
      kind: 'belt',
      name: `Insurance for ${shape.label}`,
      status: 'planned',
      species,
      plantedYear: document.site.baseYear + plantedYear,
      widthM,
      ...(edge.properties.layout === undefined ? {} : { layout: edge.properties.layout }),
    },
    geometry: asLine(options.frame, besideLine(line, sideOfLine(line, points) * apartM)),
  };
}

/** The side of a block that lies nearest to the field's middle. */
function nearestSide(ring: readonly XY[], points: readonly XY[]): readonly XY[] {
  const middle = [0, 1].map((k) => points.reduce((sum, p) => sum + p[k], 0) / points.length);
  const sides = ring.slice(1).map((b, i) => [ring[i], b] as const);
  const away = ([a, b]: readonly [XY, XY]) =>
    Math.hypot((a[0] + b[0]) / 2 - middle[0], (a[1] + b[1]) / 2 - middle[1]);
  return sides.sort((s, t) => away(s) - away(t))[0];
}

/** The site with the insuring belt planted in a year after the base year. */
export function withInsurance(
  document: SiteDocument,
  { edgeId, insurer }: InsuranceWish,
  plantedYear: number,
  options: SceneOptions,
  points: readonly XY[],
): SiteDocument {
  if ('beltId' in insurer)
    return setProperties(document, [insurer.beltId], {
      status: 'planned',
      plantedYear: document.site.baseYear + plantedYear,
    });
  const drawn = drawnInsurance(
    document,
    edgeOf(document, edgeId),
    insurer.species,
    plantedYear,
    options,
    points,
  );
  return addFeature(document, drawn as Drawn).document;
}
