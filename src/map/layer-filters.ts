import type { ExpressionSpecification } from 'maplibre-gl';

/** Which features of a source a layer draws. */
type Filter = ExpressionSpecification;
export const kindIs = (...kinds: string[]): Filter => ['in', ['get', 'kind'], ['literal', kinds]];
export const all = (...filters: Filter[]): Filter => ['all', ...filters];
export const is = (property: string, value: string | boolean): Filter => ['==', ['get', property], value];
export const shape = (type: 'Polygon' | 'LineString' | 'Point'): Filter => ['==', ['geometry-type'], type];
