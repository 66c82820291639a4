import { findSpecies } from '../plants/find-species.ts';
import { nextTag } from '../plants/tag.ts';
import { addFeature, type Drawn } from '../site/actions/add-feature.ts';
import { plantRow } from '../site/actions/plant-row.ts';
import type { FeatureId, Kind, SiteDocument } from '../site/document.ts';
import { REGISTRY } from '../site/records/registry.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { AppState } from './model.ts';
import { appStore } from './store.ts';

export type DrawnGeometry =
  | { readonly type: 'Point'; readonly coordinates: readonly number[] }
  | { readonly type: 'LineString'; readonly coordinates: readonly (readonly number[])[] }
  | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly (readonly number[])[])[] };

type View = Pick<AppState, 'brush' | 'layout' | 'document'>;

/**
 * A shape has been drawn: it becomes a feature made of the brush. Trees go on being drawn one after another; anything
 * else is chosen, so that its properties are at hand.
 */
export function drawFinished(kind: Kind | 'row', geometry: DrawnGeometry): void {
  const store = appStore.getState();
  const word = kind === 'row' ? 'row of trees' : REGISTRY[kind].label;
  let drawnId: FeatureId | null = null;
  store.edit(`Draw a ${word}`, (document) => {
    const { document: after, id } = withDrawn(document, kind, geometry, store);
    drawnId = id;
    return after;
  });
  if (drawnId === null || kind === 'tree') return;
  store.takeHand({ doing: 'looking' });
  store.select(kind === 'row' ? null : drawnId);
}

/** The document with the drawn shape in it, and its id (the first tree's of a row). */
export function withDrawn(
  document: SiteDocument,
  kind: Kind | 'row',
  geometry: DrawnGeometry,
  view: View,
): { document: SiteDocument; id: FeatureId } {
  if (kind === 'row') {
    if (geometry.type !== 'LineString')
      throw new BadInputError('A row of trees is drawn as a line from its first tree to its last.');
    const line = geometry.coordinates.map(([lon, lat]) => [lon, lat] as const);
    const { document: after, ids } = plantRow(
      document,
      line,
      { spacingM: view.brush.rowSpacingM, fit: 'fitted' },
      treeOf(document, view),
    );
    return { document: after, id: ids[0] };
  }
  const properties = { kind, ...propertiesOf(document, kind, view) };
  return addFeature(document, { properties, geometry } as unknown as Drawn);
}

function propertiesOf(document: SiteDocument, kind: Kind, view: View): Record<string, unknown> {
  const { brush } = view;
  switch (kind) {
    case 'tree':
      return treeOf(document, view);
    case 'belt':
    case 'block':
      return {
        ...planted(document, view),
        ...(brush.beltSpecies ? { species: brush.beltSpecies } : {}),
        ...(kind === 'belt' ? { widthM: brush.beltWidthM } : {}),
      };
    case 'wall':
      return { heightM: brush.wallHeightM, opticalPorosity: brush.wallPorosity };
    case 'building':
      return { heightM: brush.buildingHeightM };
    case 'field':
      return { name: freeName(document, 'Field') };
    case 'patch':
      return { name: freeName(document, 'Patch'), layer: 'ground', ...ofLayout(view) };
    case 'planting':
      return { plantedYear: document.site.baseYear, ...ofLayout(view) };
    default:
      return {};
  }
}

function treeOf(document: SiteDocument, view: View) {
  const { treeSpecies, treeRootstock } = view.brush;
  const species = findSpecies(treeSpecies, document.site.species);
  const tags = document.features.map((feature) =>
    feature.properties.kind === 'tree' ? feature.properties.tag : undefined,
  );
  return {
    tag: nextTag(species?.role ?? 'T', tags),
    ...planted(document, view),
    ...(treeSpecies ? { species: treeSpecies } : {}),
    ...(treeRootstock ? { rootstock: treeRootstock } : {}),
  };
}

/** What is planned is planted in the first year of the plan and belongs to the layout on the screen. */
const planted = (document: SiteDocument, view: View) =>
  view.brush.status === 'planned'
    ? { status: 'planned' as const, plantedYear: document.site.baseYear, ...ofLayout(view) }
    : { status: 'existing' as const };

const ofLayout = (view: View) => (view.layout === null ? {} : { layout: view.layout });

function freeName(document: SiteDocument, word: string): string {
  const names = new Set(document.features.map((feature) => feature.properties.name));
  let number = 1;
  while (names.has(`${word} ${number}`)) number++;
  return `${word} ${number}`;
}
