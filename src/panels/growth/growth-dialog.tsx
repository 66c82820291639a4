import { findSpecies } from '../../plants/find-species.ts';
import {
  LEAST_VIGOUR,
  MOST_VIGOUR,
  setSiteVigour,
  speciesOnSite,
  startAllFromNewest,
  takeVigour,
  VIGOUR_RULE,
  vigourHere,
  vigourSentences,
  vigourWords,
} from '../../state/growth-here.ts';
import { appStore, useApp } from '../../state/store.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Details } from '../parts/panel-head.tsx';
import './growth.css';
import { MissesTable } from './misses-table.tsx';
import { ShelterEffectChoice } from './shelter-effect.tsx';
import { SpeciesCurve } from './species-curve.tsx';

/** How fast things grow here: what measured heights say of the ground, and how each species grows on it. */
export function GrowthDialog() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const selection = useApp((app) => app.selection);
  const show = useApp((app) => app.show);
  const vigour = vigourHere({ document, layout });
  const here = speciesOnSite(document, layout);
  const chosen = document.features.find(({ id }) => id === selection)?.properties;
  const ofChosen =
    chosen && 'species' in chosen && typeof chosen.species === 'string' ? chosen.species : null;
  const first =
    findSpecies(ofChosen, document.site.species)?.botanicalName ??
    vigour.readings[0]?.species ??
    here[0]?.botanicalName ??
    null;
  // A figure stays with its sign at the end of a line.
  const [sentence, ...more] = vigourSentences(vigour).map((each) => each.replaceAll(' %', '\u00a0%'));
  const takeable = vigour.fit !== null && vigour.isNews;
  return (
    <Dialog title="How fast do things grow here?" broad onClose={() => show({ dialog: null })}>
      <div className="growth-dialog">
        <section className="section wide-gap" aria-label="What measured heights say">
          <Answer figure={vigourWords(vigour.fit?.site.vigour ?? vigour.now)}>{sentence}</Answer>
          {more.map((each) => (
            <p key={each}>{each}</p>
          ))}
          {takeable ? (
            <div className="buttons">
              <button type="button" className="main" onClick={() => takeVigour(appStore.getState(), vigour)}>
                Reckon with what the heights say
              </button>
            </div>
          ) : null}
          {vigour.behind.length > 0 ? (
            <>
              <p className="caution">
                The file holds newer heights of {vigour.behind.length}{' '}
                {vigour.behind.length === 1 ? 'plant' : 'plants'} than the model starts from.
              </p>
              <div className="buttons">
                <button type="button" onClick={() => startAllFromNewest(appStore.getState(), vigour.behind)}>
                  Start from the newest
                </button>
              </div>
            </>
          ) : null}
          <NumberField
            label="Things grow here to"
            value={vigour.now * 100}
            unit="%"
            digits={0}
            min={LEAST_VIGOUR * 100}
            max={MOST_VIGOUR * 100}
            hint="of the height and spread that they have on usual ground at the same age; 100 is usual."
            onChange={(percent) => setSiteVigour(appStore.getState(), percent / 100)}
          />
          <MissesTable vigour={vigour} />
          <div className="buttons">
            <button type="button" onClick={() => show({ dialog: 'tree-height' })}>
              Measure a tree or belt
            </button>
          </div>
          <Details title="How this is told">
            <p>
              A plant tells something when its year of planting and a height with its year are known, or two
              heights of different years. It is expected to grow from its height at planting (0.6 m where none
              is given) along its species’ curve. What was cut, or is shorter than it was, tells nothing.
            </p>
            <p>{VIGOUR_RULE}</p>
          </Details>
        </section>
        <div>
          <SpeciesCurve key={first} first={first} vigour={vigour} />
          <ShelterEffectChoice />
        </div>
      </div>
    </Dialog>
  );
}
