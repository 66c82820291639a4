import { bridgeSentence, whenSentence, yearBandWords } from '../../belts/belt-words.ts';
import type { BridgeOffer } from '../../belts/bridge.ts';
import { addFeature } from '../../site/actions/add-feature.ts';
import type { SiteFeature } from '../../site/document.ts';
import { judgedFieldName } from '../../state/belts-found.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { YearCurve } from './year-curve.tsx';

/** When the chosen planned belt protects, as a curve with its growth band, and what bridges the years until then. */
export function BeltWhenSection(props: { readonly feature: SiteFeature }) {
  const { id, properties } = props.feature;
  const years = useApp((app) => app.beltYears);
  const fieldName = useApp((app) => judgedFieldName(app.document));
  const units = useApp((app) => app.unitSystem);
  if (properties.kind !== 'belt' || properties.status !== 'planned') return null;
  const when = years.result?.get(id) ?? null;
  return (
    <section className="section" aria-label="When it protects">
      <h2>When it protects</h2>
      {when ? (
        <>
          <p className="belt-band">
            <strong>{capital(yearBandWords(when))}</strong>
            {years.stale ? <small className="soft"> from before the last change</small> : null}
          </p>
          <p>{whenSentence(when, fieldName, (lengthM) => formatLength(lengthM, units))}</p>
          {when.protects ? (
            <figure className="belt-figure">
              <YearCurve when={when} />
              <figcaption className="small soft">
                Share of {fieldName}, in %, on which it alone cuts the wind from its side by 30 % or more, by
                years after planting the garden; the wash from slow to fast growth, the upright band the first
                useful years.
              </figcaption>
            </figure>
          ) : null}
          <Bridges feature={props.feature} fieldName={fieldName} />
          <Details title="How this is worked out">
            <p>
              The shelter engine is run for this belt alone, in wind from its side, 1.5 m above the ground.
              Useful: the wind is cut by 30 % at five heights of the 20-year belt, and on two thirds of the
              ground on which it will be then (common practice, no source). Crowns of fruit trees stand higher
              and are protected later: the trade says ten to sixteen years from seed for alders.
            </p>
          </Details>
        </>
      ) : (
        <>
          <p className="soft">
            {years.status === 'failed'
              ? years.message
              : years.status === 'cancelled'
                ? 'Stopped.'
                : 'Being followed as it grows.'}
          </p>
          <Recompute of="beltYears" />
        </>
      )}
    </section>
  );
}

function Bridges(props: { readonly feature: SiteFeature; readonly fieldName: string }) {
  const { id } = props.feature;
  const asked = useApp((app) => app.bridgesOf === id);
  const bridges = useApp((app) => app.bridges);
  const show = useApp((app) => app.show);
  if (!asked)
    return (
      <div className="buttons">
        <button type="button" onClick={() => show({ bridgesOf: id })}>
          What bridges the first years?
        </button>
      </div>
    );
  if (bridges.status === 'failed' || bridges.status === 'cancelled')
    return (
      <>
        <p className={bridges.status === 'failed' ? 'warn' : 'soft'}>{bridges.message ?? 'Stopped.'}</p>
        <Recompute of="bridges" />
      </>
    );
  if (bridges.status !== 'ready' || bridges.stale || !bridges.result)
    return (
      <div className="buttons">
        <p className="soft" aria-live="polite">
          Trying a net and a nurse row: {Math.round(100 * bridges.progress)} %.
        </p>
        <button type="button" onClick={() => show({ bridgesOf: null })}>
          Stop
        </button>
      </div>
    );
  if (bridges.result.length === 0)
    return <p>Neither a net of 3 m nor a faster row gains anything worth it over this belt.</p>;
  return bridges.result.map((offer) => <Offer key={offer.kind} offer={offer} fieldName={props.fieldName} />);
}

function Offer({ offer, fieldName }: { readonly offer: BridgeOffer; readonly fieldName: string }) {
  const units = useApp((app) => app.unitSystem);
  const baseYear = useApp((app) => app.document.site.baseYear);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  const what = offer.kind === 'net' ? 'net' : 'nurse row';
  return (
    <div className="belt-offer">
      <p>
        {bridgeSentence(
          offer,
          fieldName,
          (year) => baseYear + year,
          (lengthM) => formatLength(lengthM, units),
        )}
      </p>
      {offer.cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
      <div className="buttons">
        <button
          type="button"
          onClick={() => {
            edit(`Add the ${what}`, (document) => addFeature(document, offer.drawn).document);
            show({ bridgesOf: null });
          }}
        >
          Add the {what}
        </button>
      </div>
    </div>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
