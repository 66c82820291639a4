import { useMemo, useState } from 'react';
import { findSpecies } from '../../plants/find-species.ts';
import type { Rootstock, Species } from '../../plants/species.ts';
import { formatLength, formatShare } from '../../state/format-measure.ts';
import {
  LEAST_VIGOUR,
  leafWords,
  MOST_VIGOUR,
  type SiteVigour,
  type SpeciesGrowth,
  setSpeciesVigour,
  speciesGrowth,
  TABLE_SEASONS,
} from '../../state/growth-here.ts';
import { appStore, useApp } from '../../state/store.ts';
import { NumberField } from '../parts/number-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { SpeciesPicker } from '../parts/species-picker.tsx';
import { HeightChart } from './height-chart.tsx';
import { SpeciesSources } from './species-sources.tsx';

const OWN_ROOTS = 'own roots';
const EVERY_SEASON = Array.from({ length: 41 }, (_, i) => i);

/** One species: how tall and wide it gets when, with its band, what was read of it, and where each figure is from. */
export function SpeciesCurve(props: { readonly first: string | null; readonly vigour: SiteVigour }) {
  const [name, setName] = useState(props.first);
  const [stock, setStock] = useState<string | null>(null);
  const siteSpecies = useApp((app) => app.document.site.species);
  const species = findSpecies(name, siteSpecies);
  return (
    <section className="section wide-gap" aria-label="How one species grows">
      <SpeciesPicker
        label="How it grows: species"
        value={name}
        onChange={(chosen) => {
          setName(chosen);
          setStock(null);
        }}
      />
      {species && species.rootstocks.length > 0 ? (
        <SelectField
          label="On the rootstock"
          value={stock ?? OWN_ROOTS}
          options={[
            { value: OWN_ROOTS, label: 'seedling or own roots' },
            ...species.rootstocks.map((each) => ({
              value: each.name,
              label: `${each.name}: ${formatShare(each.sizeFactor)} of full size`,
            })),
          ]}
          onChange={(chosen) => setStock(chosen === OWN_ROOTS ? null : chosen)}
        />
      ) : null}
      {species ? (
        <Grown
          species={species}
          rootstock={species.rootstocks.find((each) => each.name === stock) ?? null}
          vigour={props.vigour}
        />
      ) : null}
    </section>
  );
}

function Grown(props: {
  readonly species: Species;
  readonly rootstock: Rootstock | null;
  readonly vigour: SiteVigour;
}) {
  const { species, rootstock } = props;
  const document = useApp((app) => app.document);
  const units = useApp((app) => app.unitSystem);
  const curve = useMemo(
    () => speciesGrowth(document, species, rootstock, EVERY_SEASON),
    [document, species, rootstock],
  );
  const table = { ...curve, sizes: TABLE_SEASONS.map((seasons) => curve.sizes[seasons]) };
  const own = props.vigour.readings.filter((reading) => reading.species === species.botanicalName);
  const shown = own.filter((reading) => reading.rootstockFactor === (rootstock?.sizeFactor ?? 1));
  const others = own.length - shown.length;
  return (
    <>
      <figure className="growth-figure">
        <HeightChart growth={curve} readings={shown} units={units} />
        <figcaption className="small soft">
          Height of a {species.commonName}
          {rootstock ? ` on ${rootstock.name}` : ''} by years after planting, the wash from slow to fast
          growth
          {shown.length > 0 ? '; dots: heights that were read' : ''}
          {others > 0 ? `; ${others} more on other rootstocks` : ''}.
        </figcaption>
      </figure>
      <SizeTable growth={table} />
      <p>
        {leafWords(curve.leaves, curve.winterShare)}{' '}
        {species.yearsToBear === null
          ? ''
          : `A first crop worth picking ${species.yearsToBear} years after planting.`}
      </p>
      <NumberField
        label="It grows here against other things"
        value={species.vigour * 100}
        unit="%"
        digits={0}
        min={LEAST_VIGOUR * 100}
        max={MOST_VIGOUR * 100}
        hint={`100: as they do. With the ground here it is reckoned at ${formatShare(curve.vigour)} of its usual size at every age.`}
        onChange={(percent) => setSpeciesVigour(appStore.getState(), species.botanicalName, percent / 100)}
      />
      <SpeciesSources growth={curve} lengthOf={(lengthM) => formatLength(lengthM, units)} />
    </>
  );
}

function SizeTable({ growth }: { readonly growth: SpeciesGrowth }) {
  const units = useApp((app) => app.unitSystem);
  const length = (lengthM: number) => formatLength(lengthM, units);
  const cell = ({ slow, usual, fast }: SpeciesGrowth['sizes'][number]['heightM']) => (
    <td className="number">
      {length(usual)}
      {fast - slow > 0.05 ? (
        <small className="soft">
          {length(slow).replace(/ \w+$/, '')}–{length(fast)}
        </small>
      ) : null}
    </td>
  );
  return (
    <table>
      <caption>From a plant of usual size</caption>
      <thead>
        <tr>
          <th scope="col">Years after planting</th>
          <th scope="col" className="number">
            Height
          </th>
          <th scope="col" className="number">
            Spread
          </th>
        </tr>
      </thead>
      <tbody>
        {growth.sizes.map(({ seasons, heightM, spreadM }) => (
          <tr key={seasons}>
            <th scope="row">{seasons}</th>
            {cell(heightM)}
            {cell(spreadM)}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
