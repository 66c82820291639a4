import type { EdgeProfile, EdgeSide, EdgeYear } from '../../choose/edge-types.ts';
import { edgeCaveat, edgeSentences, sideWords } from '../../choose/edge-words.ts';
import { drawEdgeChart } from '../../sheets/edge-chart.ts';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import type { SiteFeature } from '../../site/document.ts';
import { formatLength, formatShare, lengthIn, lengthUnit } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { SvgPage } from '../print/svg-page.tsx';
import './belt-shelter.css';
import './beside-edge.css';

const SIZES = { width: 330, height: 226, text: 13, pen: 0.7 };
/** Lines of the table: every distance would be no more to read. */
const MOST_LINES = 14;

/** Light, shelter and both by the distance from a belt, wood or wall, across the field beside it. */
export function BesideEdge(props: { readonly feature: SiteFeature }) {
  const { id, properties } = props.feature;
  const asked = useApp((app) => app.edgeAsked === id);
  const found = useApp((app) => app.edgeProfile);
  const show = useApp((app) => app.show);
  if (properties.kind !== 'belt' && properties.kind !== 'block' && properties.kind !== 'wall') return null;
  return (
    <section className="section" aria-label="Beside this edge">
      <h2>Beside this edge</h2>
      {asked ? (
        <Answer found={found} id={id} />
      ) : (
        <p className="soft">How much light it takes and shelter it gives, step by step away from it.</p>
      )}
      <div className="buttons">
        <button type="button" aria-pressed={asked} onClick={() => show({ edgeAsked: asked ? null : id })}>
          {asked ? 'Put it away' : 'What grows beside it?'}
        </button>
      </div>
    </section>
  );
}

function Answer(props: {
  readonly found: {
    status: string;
    progress: number;
    result: EdgeProfile | null;
    stale: boolean;
    message: string | null;
  };
  readonly id: SiteFeature['id'];
}) {
  const { status, progress, result, stale, message } = props.found;
  if (status === 'failed' || status === 'cancelled')
    return (
      <>
        <p className={status === 'failed' ? 'warn' : 'soft'}>{message ?? 'Stopped.'}</p>
        <Recompute of="edgeProfile" />
      </>
    );
  if (!result || result.id !== props.id)
    return (
      <p className="soft" aria-live="polite">
        Looking beside it: {Math.round(100 * progress)} %.
      </p>
    );
  return (
    <>
      {stale ? <p className="soft small">From before the last change.</p> : null}
      {result.sides.map((side) => (
        <Side key={side.facingDeg} profile={result} side={side} />
      ))}
      <p className="soft small">{edgeCaveat(result)}</p>
    </>
  );
}

function Side(props: { readonly profile: EdgeProfile; readonly side: EdgeSide }) {
  const { profile, side } = props;
  const units = useApp((app) => app.unitSystem);
  const lengths = {
    figure: (lengthM: number) => {
      const length = lengthIn(lengthM, units);
      return String(length >= 10 ? Math.round(length) : Number(length.toFixed(1)));
    },
    unit: lengthUnit(units),
  };
  const last = side.years[side.years.length - 1];
  return (
    <div className="edge-side">
      <p>
        <b>
          Its {sideWords(side)}, on {profile.fieldName}
        </b>
      </p>
      <figure className="belt-shelter">
        <div aria-hidden="true">
          <SvgPage svg={drawing(profile, side, units)} />
        </div>
        <figcaption className="small soft">
          By the distance from its near side: full lines year {last.year}, dashed year {side.years[0].year}.
          {last.heightM === null
            ? ''
            : ` Above, the heights it has in year ${last.year} (${formatLength(last.heightM, units)} each).`}{' '}
          The wash is ground for sun lovers in year {last.year}; dotted, what they want.
        </figcaption>
      </figure>
      {side.years.toReversed().map((year) => (
        <div key={year.year} className="edge-said">
          <p>
            <b>Year {year.year}</b>
            {year.heightM === null ? '' : `, ${formatLength(year.heightM, units)} tall`}
          </p>
          {edgeSentences(year, profile.needs, lengths).map((sentence) => (
            // A figure keeps its percent sign beside it.
            <p key={sentence}>{sentence.replaceAll(' %', '\u00a0%')}</p>
          ))}
        </div>
      ))}
      <Details title="In figures">
        <Figures side={side} units={units} />
      </Details>
    </div>
  );
}

function drawing({ needs }: EdgeProfile, { years }: EdgeSide, units: UnitSystem): string {
  const last = years[years.length - 1];
  const marks = drawEdgeChart(
    {
      years,
      heightM: last.heightM ?? years[0].heightM ?? 1,
      good: last.stretches.filter(({ use }) => use === 'sun'),
      enough: { light: needs.sunLight, windCut: needs.windCut },
    },
    SIZES,
    { unit: lengthUnit(units), perM: lengthIn(1, units) },
  );
  return pageToSvg({ title: 'Beside this edge', widthMm: SIZES.width, heightMm: SIZES.height, marks });
}

function Figures({ side, units }: { readonly side: EdgeSide; readonly units: UnitSystem }) {
  const [first, last] = [side.years[0], side.years[side.years.length - 1]];
  const step = Math.ceil(last.bins.length / MOST_LINES);
  const atFirst = (fromM: number) => first.bins.find((bin) => bin.fromM === fromM);
  return (
    <table className="edge-figures">
      <caption>
        Year {last.year}, and small year {first.year}
      </caption>
      <thead>
        <tr>
          <th scope="col">{lengthUnit(units)} out</th>
          <th scope="col" className="number">
            heights
          </th>
          <th scope="col" className="number">
            light
          </th>
          <th scope="col" className="number">
            wind cut
          </th>
          <th scope="col" className="number">
            both on
          </th>
        </tr>
      </thead>
      <tbody>
        {last.bins
          .filter((_, i) => i % step === 0)
          .map((bin) => {
            const before = atFirst(bin.fromM);
            return (
              <tr key={bin.fromM}>
                <th scope="row">{Math.round(lengthIn(bin.atM, units))}</th>
                <td className="number">{heightsOf(bin.atM, last)}</td>
                {(['lightShare', 'windCut', 'bothShare'] as const).map((of) => (
                  <td key={of} className="number">
                    {formatShare(bin[of])}
                    {before ? <small className="soft">{formatShare(before[of])}</small> : null}
                  </td>
                ))}
              </tr>
            );
          })}
      </tbody>
    </table>
  );
}

const heightsOf = (atM: number, { heightM }: EdgeYear): string =>
  heightM === null ? '–' : (atM / heightM).toFixed(1);
