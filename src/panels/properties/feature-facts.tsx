import { distanceM, lineLengthM } from '../../geo/geodesic.ts';
import type { SiteFeature } from '../../site/document.ts';
import { areaOfFeatureM2 } from '../../state/area-figures.ts';
import { careWording } from '../../state/care.ts';
import { formatArea, formatHours, formatLength, formatShare } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

/** What is known of the chosen thing: its size on the ground, its height in the chosen year, what it costs or gets. */
export function FeatureFacts(props: { feature: SiteFeature }) {
  const { feature } = props;
  const units = useApp((app) => app.unitSystem);
  const year = useApp((app) => app.year);
  const siteSpecies = useApp((app) => app.document.site.species);
  const thing = useApp((app) => app.grown.things.find((each) => each.id === feature.id) ?? null);
  const patch = useApp((app) => app.outlook.result?.find((each) => each.id === feature.id) ?? null);
  const cost = useApp((app) => app.costs.result?.find((each) => each.id === feature.id) ?? null);
  const facts: [string, string][] = [];
  if (feature.geometry.type === 'Polygon') facts.push(['Area', formatArea(areaOfFeatureM2(feature), units)]);
  if (feature.geometry.type === 'LineString') {
    const line = feature.geometry.coordinates.map(([lon, lat]) => [lon, lat] as const);
    facts.push([
      'Length',
      formatLength(line.length === 2 ? distanceM(line[0], line[1]) : lineLengthM(line), units),
    ]);
  }
  const replaced = thing && 'species' in feature.properties && thing.species !== feature.properties.species;
  if (replaced)
    facts.push([
      `In its place in year ${year}`,
      careWording(siteSpecies, units).plant(thing.species ?? 'not known'),
    ]);
  if (thing) {
    const [low, high] = thing.heightBandM;
    facts.push([
      `Height in year ${year}`,
      `${formatLength(thing.heightM, units)}${high - low > 0.1 ? ` (${formatLength(low, units)} to ${formatLength(high, units)})` : ''}`,
    ]);
    if (thing.radiusM > 0) facts.push([`Spread in year ${year}`, formatLength(thing.radiusM * 2, units)]);
  } else if (['tree', 'belt', 'block', 'wall'].includes(feature.properties.kind))
    facts.push([`In year ${year}`, 'not there']);
  if (patch) {
    facts.push([`Light in year ${patch.year}`, `${formatShare(patch.meanLightShare)} of open light`]);
    facts.push([
      'Enough light',
      patch.years === null
        ? patch.enoughLight
          ? 'yes'
          : 'no'
        : patch.years.darkFromYear === null
          ? 'through year 40'
          : `until year ${patch.years.darkFromYear}`,
    ]);
  }
  if (cost) facts.push(['Costs the patches', `${formatHours(cost.sunHoursADay)} of sun a day`]);
  if (facts.length === 0) return null;
  return (
    <dl className="facts-list" aria-live="polite">
      {facts.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
