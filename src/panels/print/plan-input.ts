import { declinationAt } from '../../geo/declination.ts';
import type { LonLat } from '../../geo/frame.ts';
import { findSpecies } from '../../plants/find-species.ts';
import type { Orientation, PaperSize } from '../../sheets/paper.ts';
import type { LinedThing, OutlinedThing, PlanPageInput, PlanTree } from '../../sheets/plan-input.ts';
import { chosenFeatures, takenField } from '../../site/chosen-features.ts';
import type { SiteFeature } from '../../site/document.ts';
import { REGISTRY } from '../../site/records/registry.ts';
import type { AppState } from '../../state/model.ts';
import { mostInWords } from '../../state/most-in-words.ts';
import { pictureRaster } from '../../state/picture-raster.ts';
import { sizesNow } from '../../state/sizes-now.ts';

export interface PageChoices {
  readonly paper: PaperSize;
  readonly orientation: Orientation;
  readonly scale: number | 'fit';
  readonly inking: 'tints' | 'ink';
}

const CAUTIONS = [
  'Sizes are estimates for the year named, not guarantees; a shade or shelter figure never means that a tree is sound.',
  'Look for buried services, overhead lines and drains before digging; local codes and licensed people decide.',
];

/** All that the printed plan shows, taken from what is on the screen. */
export function planInput(state: AppState, choices: PageChoices, today: Date): PlanPageInput {
  const features = chosenFeatures(state.document, state.layout);
  const footprints = new Map(state.grown.things.map((thing) => [thing.id, thing]));
  const outlined = (kind: SiteFeature['properties']['kind']): OutlinedThing[] =>
    features
      .filter((feature) => feature.properties.kind === kind)
      .flatMap((feature) => {
        const thing = footprints.get(feature.id);
        const rings = thing?.footprint ?? ringsOf(feature);
        const status = 'status' in feature.properties ? feature.properties.status : undefined;
        return rings.length === 0
          ? []
          : [{ label: thing?.label ?? labelOf(feature), rings, planned: status === 'planned' }];
      });
  const lined = (kind: SiteFeature['properties']['kind']): LinedThing[] =>
    features
      .filter((feature) => feature.properties.kind === kind)
      .flatMap((feature) => linesOf(feature).map((line) => ({ label: labelOf(feature), line })));
  const raster = pictureRaster(state);
  return {
    ...choices,
    unit: state.unitSystem === 'metric' ? 'm' : 'ft',
    siteName: state.document.site.name,
    layoutName: state.layout,
    date: today.toLocaleDateString(undefined, { day: 'numeric', month: 'long', year: 'numeric' }),
    year: state.year,
    calendarYear: state.document.site.baseYear + state.year,
    frame: state.frame,
    declinationDeg: declinationAt(state.centre, today).declinationDeg,
    extent: takenRing(state),
    fields: outlined('field'),
    belts: outlined('belt'),
    blocks: outlined('block'),
    buildings: outlined('building'),
    walls: outlined('wall'),
    patches: outlined('patch'),
    paths: lined('path'),
    keepOuts: [...lined('keepOut'), ...lined('service')],
    trees: treesOf(state, features),
    ground: state.ground,
    bandMap:
      raster === null
        ? null
        : {
            grid: { ...raster.grid, values: raster.values },
            bands: raster.bands,
            detail: raster.seasonAndHeight,
            lines: raster.lines,
            supposed: raster.supposed,
            whatWouldChange: mostInWords(state),
          },
    cautions: CAUTIONS,
  };
}

/** What must be on the page: the taken field; without one all that is drawn. */
function takenRing(state: AppState): readonly LonLat[] | undefined {
  const taken = takenField(state.document);
  return taken ? asPlaces(taken.geometry.coordinates[0]) : undefined;
}

function treesOf(state: AppState, features: readonly SiteFeature[]): PlanTree[] {
  const then = new Map(state.grown.things.map((thing) => [thing.id, thing]));
  const now = sizesNow(state);
  const size = (thing: { heightM: number; radiusM: number } | undefined) =>
    thing ? { heightM: thing.heightM, spreadM: thing.radiusM * 2 } : null;
  return features.flatMap((feature): PlanTree[] => {
    if (feature.properties.kind !== 'tree' || feature.geometry.type !== 'Point') return [];
    const { properties } = feature;
    const botanical = then.get(feature.id)?.species ?? properties.species;
    const species = findSpecies(botanical, state.document.site.species);
    const [lon, lat] = feature.geometry.coordinates;
    const name = [
      species?.botanicalName ?? botanical ?? properties.name ?? 'tree',
      botanical === properties.species ? properties.variety : undefined,
    ]
      .filter(Boolean)
      .join(' ');
    return [
      {
        tag: properties.tag ?? String(feature.id),
        name,
        lonLat: [lon, lat],
        role:
          species?.role === 'N'
            ? 'nut'
            : species?.role === 'F'
              ? 'fruit'
              : species?.role === 'A'
                ? 'nurse'
                : 'other',
        planned: properties.status === 'planned',
        now: size(now.get(feature.id)),
        inYear: size(then.get(feature.id)),
      },
    ];
  });
}

const labelOf = (feature: SiteFeature): string =>
  feature.properties.name ?? REGISTRY[feature.properties.kind].label;

const asPlaces = (line: readonly (readonly number[])[]): LonLat[] => line.map(([lon, lat]) => [lon, lat]);

function ringsOf(feature: SiteFeature): LonLat[][] {
  if (feature.geometry.type === 'Polygon') return feature.geometry.coordinates.map(asPlaces);
  return [];
}

function linesOf(feature: SiteFeature): LonLat[][] {
  if (feature.geometry.type === 'LineString') return [asPlaces(feature.geometry.coordinates)];
  if (feature.geometry.type === 'Polygon') return feature.geometry.coordinates.map(asPlaces);
  return [];
}
