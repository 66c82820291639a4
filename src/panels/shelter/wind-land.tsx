import { setSite } from '../../site/actions/set-site.ts';
import type { WindRecord } from '../../site/records/site.ts';
import { ROUGHNESS_CLASSES, type SiteWind } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';
import { LengthField } from '../parts/length-field.tsx';
import { SelectField } from '../parts/select-field.tsx';

const LANDS = ROUGHNESS_CLASSES.map(({ words, roughnessM }) => ({ value: String(roughnessM), label: words }));
const numberOf = (text: string): number | undefined => (text === '' ? undefined : Number(text));

/** A roughness length of the site's own, between the classes, has a line too. */
const landsWith = (roughnessM: number | undefined) =>
  roughnessM === undefined || LANDS.some(({ value }) => value === String(roughnessM))
    ? LANDS
    : [...LANDS, { value: String(roughnessM), label: `roughness length ${roughnessM} m` }];

/** How high and over what land the wind was measured, and what lies around the site: speeds are moved from one to the other. */
export function WindLand(props: { rests: SiteWind['rests'] }) {
  const { measured } = props.rests;
  const wind = useApp((app) => app.document.site.wind);
  const edit = useApp((app) => app.edit);
  if (!measured) return null;
  const change = (label: string, part: Partial<WindRecord>) =>
    edit(label, (site) => {
      const next: Record<string, unknown> = { ...site.site.wind, ...part };
      for (const key of Object.keys(part)) if (next[key] === undefined) delete next[key];
      return setSite(site, { wind: Object.keys(next).length > 0 ? next : undefined });
    });
  return (
    <>
      <LengthField
        label="Measured above the ground"
        valueM={measured.heightM}
        minM={0.5}
        maxM={200}
        hint="10 m is the usual mast"
        onChange={(heightM) => change('Set the height of the wind gauge', { heightM })}
      />
      <SelectField
        label="Around the gauge lies"
        value={String(wind?.measuredRoughnessM ?? '')}
        options={[{ value: '', label: 'not known: open farmland' }, ...landsWith(wind?.measuredRoughnessM)]}
        onChange={(value) =>
          change('Set the land around the wind gauge', { measuredRoughnessM: numberOf(value) })
        }
      />
      <SelectField
        label="Around the site lies"
        value={String(wind?.siteRoughnessM ?? '')}
        options={[{ value: '', label: 'the same land' }, ...landsWith(wind?.siteRoughnessM)]}
        hint="The country for half a mile around, not the site’s own belts: those are computed."
        onChange={(value) => change('Set the land around the site', { siteRoughnessM: numberOf(value) })}
      />
    </>
  );
}
