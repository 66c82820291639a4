import { cutsAnswer } from '../../cuts/cut-words.ts';
import { plural } from '../../state/format-words.ts';
import { appStore, useApp } from '../../state/store.ts';
import { forgetRefused, shownCutWay } from '../../state/winter-cuts.ts';
import { Section } from '../parts/panel-head.tsx';
import { CutList } from './cut-list.tsx';
import { useCutLength } from './use-cut-length.ts';

/** The few cuts of the winter before the season that is shown. */
export function CutsSection() {
  const year = useApp((app) => app.year);
  const baseYear = useApp((app) => app.document.site.baseYear);
  const hasPlants = useApp((app) => app.grown.things.length > 0);
  const refused = useApp((app) => app.cutting.refused);
  const propose = useApp((app) => app.proposeCuts);
  const { status, result, message } = useApp((app) => app.winterCuts);
  const way = useApp(shownCutWay);
  const length = useCutLength();
  if (!hasPlants) return null;
  const season = baseYear + year;
  const isOther = result !== null && result.wish.year !== year;
  return (
    <Section title="Each winter’s cut">
      <div aria-live="polite">
        {status === 'failed' ? <p className="warn">{message}</p> : null}
        {status === 'cancelled' && !result ? (
          <p className="soft">Stopped before an answer was there.</p>
        ) : null}
        {result ? <p>{cutsAnswer(result, length, way ?? undefined)}</p> : null}
      </div>
      {result ? null : (
        <p className="soft">
          The fewest thinnings, crown raisings, coppicings or fellings before the season of {season} that keep
          every patch its light for five more years, and what each costs.
        </p>
      )}
      {isOther ? (
        <p className="small soft">
          That is the winter before {result.fromYear}; the map shows {season}.
        </p>
      ) : null}
      {result && way ? <CutList found={result} way={way} /> : null}
      <div className="buttons">
        <button type="button" onClick={propose} disabled={status === 'computing'}>
          {status === 'computing' ? 'Looking for cuts…' : `Look for the cuts before ${season}`}
        </button>
        {refused.length > 0 ? (
          <button type="button" className="link" onClick={() => forgetRefused(appStore)}>
            Allow the {plural(refused.length, 'plant')} again that you spared
          </button>
        ) : null}
      </div>
    </Section>
  );
}
