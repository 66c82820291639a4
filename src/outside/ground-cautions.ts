import { type LonLat, toLocal } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import { distanceToLineM, isInside } from '../site/plane-geometry.ts';
import type { SiteOutdoors } from './site-outdoors.ts';

/** Kept from a line or drain of which nothing else is said, m. */
const SERVICE_OFFSET_M = 3;

/** What the ground at a place asks for: other people's land, things buried or overhead. */
export function groundCautions({ document, frame, layout }: SiteOutdoors): (place: LonLat) => string[] {
  const features = chosenFeatures(document, layout);
  const fields = features.flatMap(({ properties, geometry }) =>
    properties.kind === 'field' && geometry.type === 'Polygon'
      ? [geometry.coordinates.map((ring) => ringToLocal(frame, ring))]
      : [],
  );
  const services = features.flatMap(({ properties, geometry }) => {
    if (properties.kind !== 'service' || geometry.type === 'Point') return [];
    const lines = geometry.type === 'LineString' ? [geometry.coordinates] : geometry.coordinates;
    return [
      {
        name: properties.name ?? properties.reason ?? 'a line or drain',
        offsetM: properties.offsetM ?? SERVICE_OFFSET_M,
        lines: lines.map((line) => ringToLocal(frame, line)),
        rings: geometry.type === 'Polygon',
        overhead: /overhead/i.test(`${properties.name} ${properties.reason}`),
      },
    ];
  });
  return (place) => {
    const at = toLocal(frame, place);
    const near = services.filter(
      ({ lines, offsetM, rings }) =>
        lines.some((line) => distanceToLineM(at, line) < offsetM) || (rings && isInside(at, lines)),
    );
    return [
      ...(fields.length > 0 && !fields.some((rings) => isInside(at, rings))
        ? ['outside the fields: ask whose ground it is']
        : []),
      ...near.map(({ name, overhead }) =>
        overhead
          ? `under ${name}: raise nothing long there`
          : `beside ${name}: lay a marker, drive nothing into the ground`,
      ),
    ];
  };
}
