import type { BeltProposals, ProposedBelt } from '../../belts/propose-result.ts';
import {
  aimWords,
  beltCautions,
  fromYearWords,
  overBandWords,
  plantCautions,
} from '../../belts/propose-words.ts';
import { formatArea, formatLength, formatShare } from '../../state/format-measure.ts';
import {
  acceptBelts,
  declineBelts,
  openBelts,
  pointOut,
  shownWay,
  showWay,
} from '../../state/proposed-belts.ts';
import { appStore, useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { Details } from '../parts/panel-head.tsx';
import './proposal-list.css';

/** The ways that were found: figures of the one that is looked at, and its belts to accept or refuse. */
export function ProposalList({ found }: { readonly found: BeltProposals }) {
  const proposing = useApp((app) => app.proposing);
  const proposals = useApp((app) => app.proposals);
  const features = useApp((app) => app.document.features);
  const units = useApp((app) => app.unitSystem);
  const propose = useApp((app) => app.proposeBelts);
  const way = shownWay({ proposing, proposals });
  if (!way) return null;
  const open = openBelts({ proposing, proposals });
  const { alternatives, fieldAreaM2, wish } = found;
  const declined = way.belts.some((belt) => proposing.declined.includes(belt));
  const changed = features !== proposing.features;
  return (
    <>
      {alternatives.length > 1 ? (
        <Choice
          label="Which way"
          value={String(proposing.way)}
          options={alternatives.map((one, i) => ({ value: String(i), label: aimWords(one) }))}
          onChange={(value) => showWay(appStore, Number(value))}
        />
      ) : (
        <p className="field-label">{aimWords(way)}</p>
      )}
      <dl className="facts-list proposal-facts">
        <div>
          <dt>
            Wind cut by {formatShare(wish.cutShare)} or more over, year {wish.year}
          </dt>
          <dd>
            {formatShare(way.overShare.usual)}
            <small className="soft band">{overBandWords(way)}, slow to fast growth</small>
          </dd>
        </div>
        <div>
          <dt>As asked from</dt>
          <dd>{fromYearWords(way)}</dd>
        </div>
        <div>
          <dt>Ground under the belts</dt>
          <dd>
            {formatArea(way.landM2, units)}
            <small className="soft band">{formatShare(way.landM2 / fieldAreaM2)} of the field</small>
          </dd>
        </div>
        <div>
          <dt>Ground beside them, now below half of open light</dt>
          <dd>{formatArea(way.darkM2, units)}</dd>
        </div>
        <div>
          <dt>Light on the field, growing season</dt>
          <dd>
            {formatShare(way.light.without)} → {formatShare(way.light.with)}
          </dd>
        </div>
      </dl>
      {changed || declined ? (
        <p className="small soft">
          {declined
            ? 'Without what was refused these figures no longer hold.'
            : 'The site has changed since: these figures are from before.'}{' '}
          <button type="button" className="link" onClick={propose}>
            Propose again
          </button>
        </p>
      ) : null}
      <ul className="proposed-belts" aria-label="Proposed belts">
        {way.belts.map((belt) => (
          <li key={belt.letter}>
            <BeltLine belt={belt} year={wish.year} said={saidOf(belt)} />
          </li>
        ))}
      </ul>
      {open.length > 1 ? (
        <div className="buttons">
          <button type="button" onClick={() => acceptBelts(appStore, open)}>
            Accept all {open.length}
          </button>
          <button type="button" onClick={() => declineBelts(appStore, open)}>
            None of these
          </button>
        </div>
      ) : null}
      <Details title="Before planting">
        <div>
          {beltCautions(way).map((caution) => (
            <p key={caution} className="caution">
              {caution}
            </p>
          ))}
        </div>
      </Details>
    </>
  );

  function saidOf(belt: ProposedBelt): 'accepted' | 'refused' | null {
    if (proposing.accepted.includes(belt)) return 'accepted';
    return proposing.declined.includes(belt) ? 'refused' : null;
  }
}

function BeltLine(props: {
  readonly belt: ProposedBelt;
  readonly year: number;
  readonly said: 'accepted' | 'refused' | null;
}) {
  const units = useApp((app) => app.unitSystem);
  const { belt, year, said } = props;
  const { letter, name, heightM, heightBandM, option } = belt;
  const { plant, place } = option;
  const [low, high] = heightBandM;
  // A figure and its unit stay on one line.
  const length = (metres: number) => formatLength(metres, units).replace(' ', '\u00a0');
  const point = () => pointOut(appStore, letter);
  return (
    // Pointing at a line, or coming to its buttons by keys, shows which belt on the map it is.
    <fieldset
      aria-label={`${letter}: ${name}`}
      className="proposed-belt"
      onPointerEnter={point}
      onFocus={point}
      onPointerLeave={() => pointOut(appStore, null)}
      onBlur={() => pointOut(appStore, null)}
    >
      <b className="proposed-letter" aria-hidden="true">
        {letter}
      </b>
      <div>
        <p>
          <span className="unseen">{letter}: </span>
          {name}
        </p>
        <p className="small soft">
          <i>{plant.species}</i>
          {plant.mixedWith ? `, to be mixed with ${plant.mixedWith.commonName}` : ''}. {length(place.lengthM)}{' '}
          long, {length(plant.widthM)} wide; in year {year} {length(heightM)} high
          {high - low > 0.2 ? ` (${length(low)} to ${length(high)})` : ''}.
        </p>
        {plantCautions(plant).map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
        {said ? (
          <p className="small">
            {said === 'accepted'
              ? 'Planned: choose it on the map or in the table below to move or reshape it.'
              : 'Refused.'}
          </p>
        ) : (
          <div className="buttons">
            <button
              type="button"
              aria-label={`Accept ${letter}`}
              onClick={() => acceptBelts(appStore, [belt])}
            >
              Accept
            </button>
            <button
              type="button"
              aria-label={`Not this one: ${letter}`}
              onClick={() => declineBelts(appStore, [belt])}
            >
              Not this one
            </button>
          </div>
        )}
      </div>
    </fieldset>
  );
}
