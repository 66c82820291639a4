import type { CutWay, ProposedCut, WinterCuts } from '../../cuts/cut-result.ts';
import { cropWords, cutAimWords, cutCautions, cutWords, notProvenWords } from '../../cuts/cut-words.ts';
import { formatShare } from '../../state/format-measure.ts';
import { appStore, useApp } from '../../state/store.ts';
import {
  acceptCuts,
  declineCuts,
  isPlannedCut,
  openCuts,
  pointOutCut,
  showCutWay,
} from '../../state/winter-cuts.ts';
import { Choice } from '../parts/choice.tsx';
import { Details } from '../parts/panel-head.tsx';
import './cuts.css';
import { useCutLength } from './use-cut-length.ts';

/** The ways that were found: what the one looked at costs, and its cuts to accept or refuse. */
export function CutList({ found, way }: { readonly found: WinterCuts; readonly way: CutWay }) {
  const cutting = useApp((app) => app.cutting);
  const winterCuts = useApp((app) => app.winterCuts);
  const features = useApp((app) => app.document.features);
  const open = openCuts({ cutting, winterCuts }, features);
  const declined = way.cuts.some((cut) => cutting.declined.includes(cut));
  const changed = features !== cutting.features;
  const notProven = notProvenWords(way);
  return (
    <>
      {found.ways.length > 1 ? (
        <Choice
          label="Which way"
          value={String(cutting.way)}
          options={found.ways.map((one, i) => ({ value: String(i), label: cutAimWords(one) }))}
          onChange={(value) => showCutWay(appStore, Number(value))}
        />
      ) : (
        <p className="field-label">{cutAimWords(way)}</p>
      )}
      <dl className="facts-list cut-facts">
        <div>
          <dt>Crop</dt>
          <dd>{cropWords(way.cropYearsLost)}</dd>
        </div>
        <div>
          <dt>Wind cut by, mean of {found.fieldName}</dt>
          <dd>
            {tenths(way.windCut.without)} → {tenths(way.windCut.with)}
          </dd>
        </div>
        {way.patches.map(({ id, name, areaShare, areaShareToKeep }) => (
          <div key={id}>
            <dt>{name}: with enough light in its darkest year</dt>
            <dd>
              {formatShare(areaShare.without)} → {formatShare(areaShare.with)}
              <small className="soft cut-asked">{formatShare(areaShareToKeep)} asked</small>
            </dd>
          </div>
        ))}
      </dl>
      {notProven ? <p className="small soft">{notProven}</p> : null}
      {changed || declined ? (
        <p className="small soft">
          {declined
            ? 'Without what was spared these figures no longer hold: look again.'
            : 'The site has changed since: these figures are from before.'}
        </p>
      ) : null}
      <ul className="cut-list" aria-label="Proposed cuts">
        {way.cuts.map((cut) => (
          <li key={cut.letter}>
            <CutLine cut={cut} said={saidOf(cut)} />
          </li>
        ))}
      </ul>
      {open.length > 1 ? (
        <div className="buttons">
          <button type="button" onClick={() => acceptCuts(appStore, open)}>
            Accept all {open.length}
          </button>
        </div>
      ) : null}
      <Details title="Before cutting">
        <div>
          {cutCautions(way).map((caution) => (
            <p key={caution} className="caution">
              {caution}
            </p>
          ))}
        </div>
      </Details>
    </>
  );

  function saidOf(cut: ProposedCut): 'accepted' | 'spared' | null {
    if (isPlannedCut(features, cut)) return 'accepted';
    return cutting.declined.includes(cut) ? 'spared' : null;
  }
}

/** Shelter moves by tenths of a percent. */
const tenths = (share: number): string => `${(share * 100).toFixed(1)}\u00a0%`;

function CutLine({ cut, said }: { readonly cut: ProposedCut; readonly said: 'accepted' | 'spared' | null }) {
  const length = useCutLength();
  const { letter, plant, option } = cut;
  const words = cutWords(cut, length);
  const point = () => pointOutCut(appStore, letter);
  return (
    // Pointing at a line, or coming to its buttons by keys, shows which plant on the map it is.
    <fieldset
      aria-label={`${letter}: ${words}`}
      className="cut-line"
      onPointerEnter={point}
      onFocus={point}
      onPointerLeave={() => pointOutCut(appStore, null)}
      onBlur={() => pointOutCut(appStore, null)}
    >
      <b className="cut-letter" aria-hidden="true">
        {letter}
      </b>
      <div>
        <p>{words}</p>
        <p className="small soft">
          {plant.bearsCrop ? `${cropWords(option.cropYearsLost)}; ` : ''}
          {option.takenShare < 0.995 ? `${formatShare(option.takenShare)} of the crown taken, ` : ''}
          now {length(plant.heightM)} high.
        </p>
        {said ? (
          <p className="small">{said === 'accepted' ? 'Planned, among its care.' : 'Spared.'}</p>
        ) : (
          <div className="buttons">
            <button
              type="button"
              aria-label={`Accept ${letter}: ${words}`}
              onClick={() => acceptCuts(appStore, [cut])}
            >
              Accept
            </button>
            <button
              type="button"
              aria-label={`Spare ${letter}: ${plant.label}`}
              onClick={() => declineCuts(appStore, [cut])}
            >
              Spare it
            </button>
          </div>
        )}
      </div>
    </fieldset>
  );
}
