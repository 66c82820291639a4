import { useApp } from '../../state/store.ts';
import { yearsAnswer } from '../../years/years-words.ts';
import { Answer } from '../parts/answer.tsx';
import { Details } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { yearCurves } from './year-curves.ts';
import { YearsChart } from './years-chart.tsx';
import { FirstCrops, PatchTurns } from './years-lists.tsx';
import { YEARS_LOOK_ID } from './years-look-id.ts';
import { YearsTable } from './years-table.tsx';

/** The years in one look: the answer first, then the curves over the years that the map follows. */
export function YearsLookPart() {
  const yearsLook = useApp((app) => app.yearsLook);
  const outlook = useApp((app) => app.outlook);
  const hasField = useApp((app) =>
    app.document.features.some(({ properties }) => properties.kind === 'field'),
  );
  const show = useApp((app) => app.show);
  const look = yearsLook.result;
  const patches = outlook.result;
  const curves = yearCurves(look, patches);
  return (
    <section
      id={YEARS_LOOK_ID}
      className="years-look"
      tabIndex={-1}
      aria-label="The years in one look"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        show({ yearsOpen: false });
        document.querySelector<HTMLElement>('.open-years')?.focus();
      }}
    >
      <div className="panel years-said">
        {!hasField ? (
          <Answer figure="No field yet">
            Draw a field in Ground, and its years are followed from there.
          </Answer>
        ) : yearsLook.status === 'failed' ? (
          <Answer figure="Not worked out" dark>
            {yearsLook.message}
          </Answer>
        ) : !look ? (
          <Answer figure="…">
            {yearsLook.status === 'cancelled'
              ? 'Stopped before an answer was there.'
              : 'Following the field through the years.'}
          </Answer>
        ) : (
          <LookAnswer />
        )}
        <Working />
        <Recompute of="yearsLook" />
      </div>
      {hasField ? <YearsChart curves={curves} patches={patches} crops={look?.crops ?? null} /> : null}
      <div className="panel years-more">
        {patches ? <PatchTurns patches={patches} /> : null}
        {look?.crops ? <FirstCrops crops={look.crops} /> : null}
        {look ? <YearsTable curves={curves} /> : null}
        <Details title="What is counted">
          <p>
            In shelter: the wind of the growing season is cut by 30 % or more. Enough light: what each patch
            is to keep in the growing season. Under canopy: below trees, belts and woods, seen from above.
            Bearing: as tall as a tree of its kind is in its first year of crop. Shaded: slow to fast growth.
          </p>
          <p>An estimate, no guarantee: seasons, soils and pruning differ.</p>
        </Details>
      </div>
    </section>
  );
}

function LookAnswer() {
  const yearsLook = useApp((app) => app.yearsLook);
  const outlook = useApp((app) => app.outlook);
  if (!yearsLook.result) return null;
  const { figure, sentence } = yearsAnswer(yearsLook.result, outlook.result);
  return (
    <Answer figure={figure} aged={yearsLook.stale ? 'From before the last change.' : null}>
      {sentence}
    </Answer>
  );
}

/** How far it is, and a way to stop it. */
function Working() {
  const computing = useApp((app) => app.yearsLook.status === 'computing');
  const percent = useApp((app) => Math.round(100 * app.yearsLook.progress));
  const cancel = useApp((app) => app.cancelComputation);
  if (!computing) return null;
  return (
    <div className="years-working">
      <label>
        Following the years: {percent} %
        <progress value={percent} max={100} />
      </label>
      <button type="button" onClick={cancel}>
        Stop
      </button>
    </div>
  );
}
