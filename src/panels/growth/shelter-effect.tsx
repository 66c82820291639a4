import { setShelterEffect } from '../../state/shelter-effect-here.ts';
import { appStore, useApp } from '../../state/store.ts';
import { shelterEffectOf } from '../../years/shelter-effect.ts';
import { Recompute } from '../parts/recompute.tsx';
import { SelectField } from '../parts/select-field.tsx';

/** Growth in full shelter against the open: what a person may reckon with. */
const EFFECTS = [
  { value: '1', label: 'does not speed growth' },
  { value: '1.1', label: 'speeds it by a tenth' },
  { value: '1.2', label: 'speeds it by a fifth' },
  { value: '1.5', label: 'speeds it by half' },
  { value: '2', label: 'doubles it' },
];
const optionsWith = (effect: number) =>
  EFFECTS.some(({ value }) => Number(value) === effect)
    ? EFFECTS
    : [...EFFECTS, { value: String(effect), label: `makes it ${Math.round(effect * 100)} %` }].sort(
        (a, b) => Number(a.value) - Number(b.value),
      );

/** How much shelter speeds growth: as it is reckoned with in every map, and the most, for the fast end of the band. */
export function ShelterEffectChoice() {
  const site = useApp((app) => app.document.site);
  const { usual, most } = shelterEffectOf(site);
  const set = (part: Parameters<typeof setShelterEffect>[1]) => setShelterEffect(appStore.getState(), part);
  return (
    <section className="section" aria-label="What shelter does for growth">
      <h3>Does shelter speed growth?</h3>
      <p>
        {usual === 1
          ? 'Not in any map: what is planted into shelter is drawn as if it stood in the open. '
          : `In every map: where half of the wind is cut, a plant grows ${Math.round((usual - 1) * 100)} % faster, less where less is cut. `}
        The fast end of the band over the years has it do so by up to {Math.round((most - 1) * 100)} %.
      </p>
      <SelectField
        label="Full shelter, as it is reckoned with,"
        value={String(usual)}
        options={optionsWith(usual)}
        onChange={(value) => set({ usual: Number(value) })}
      />
      <SelectField
        label="At the most it"
        value={String(most)}
        options={optionsWith(most)}
        hint="Published: up to a fifth, young pines in a wind tunnel (Rees & Grace 1980). Common practice, no source: up to twice."
        onChange={(value) => set({ most: Number(value) })}
      />
      <Recompute of="stepped" />
    </section>
  );
}
