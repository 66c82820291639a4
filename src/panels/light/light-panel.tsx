import { useApp } from '../../state/store.ts';
import { CutsSection } from '../cuts/cuts-section.tsx';
import { Answer } from '../parts/answer.tsx';
import { AskSpot } from '../parts/ask-spot.tsx';
import { Choice } from '../parts/choice.tsx';
import { DrawButtons } from '../parts/draw-buttons.tsx';
import { PanelHead, Section } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { OpenYears } from '../years/open-years.tsx';
import { BandLimits } from './band-limits.tsx';
import { CostTable } from './cost-table.tsx';
import { InkedLines } from './inked-lines.tsx';
import { LightDetails } from './light-details.tsx';
import { lightAnswer } from './light-sentence.ts';
import { LightToKeep } from './light-to-keep.tsx';
import { PatchTable } from './patch-table.tsx';

/** Light: which patches keep enough, and which trees cost most. */
export function LightPanel() {
  const picture = useApp((app) => app.picture);
  const layer = useApp((app) => app.layer);
  const show = useApp((app) => app.show);
  return (
    <div className="panel">
      <PanelHead question="Do the patches get enough light?">
        How much of the open sky’s light reaches the plants under the trees.
      </PanelHead>
      <LightFigure />
      <div className="section">
        <Choice
          label="What the map shows"
          value={picture}
          options={[
            { value: 'light-share', label: 'Light' },
            { value: 'sun-hours', label: 'Hours of sun' },
            { value: 'daily-light', label: 'Daily light' },
            { value: 'first-sun', label: 'First sun' },
            { value: 'last-sun', label: 'Last sun' },
          ]}
          onChange={(chosen) => show({ picture: chosen })}
        />
        <Choice
          label="At the height of"
          value={layer}
          options={[
            { value: 'ground', label: 'Ground layer' },
            { value: 'shrub', label: 'Shrubs' },
          ]}
          onChange={(chosen) => show({ layer: chosen })}
        />
      </div>
      <LightToKeep />
      <InkedLines />
      <Section title="Draw">
        <DrawButtons
          items={[
            { label: 'A patch', kind: 'patch', geometry: 'Polygon' },
            { label: 'A tree', kind: 'tree', geometry: 'Point' },
            { label: 'A row', kind: 'row', geometry: 'LineString' },
          ]}
        />
      </Section>
      <PatchTable />
      <CostTable />
      <CutsSection />
      <div className="buttons">
        <AskSpot purpose="horizon">Horizon from a spot</AskSpot>
        <OpenYears />
      </div>
      <BandLimits />
      <LightDetails />
    </div>
  );
}

function LightFigure() {
  const outlook = useApp((app) => app.outlook);
  const light = useApp((app) => app.light);
  const hasGround = useApp((app) => app.document.features.length > 0);
  if (!hasGround)
    return (
      <Answer figure="No ground yet">Draw a field in Ground, and its light is worked out at once.</Answer>
    );
  const failed =
    outlook.status === 'failed' ? outlook.message : light.status === 'failed' ? light.message : null;
  if (failed)
    return (
      <Answer figure="Not worked out" dark>
        {failed}
      </Answer>
    );
  if (!outlook.result)
    return (
      <>
        <Answer figure="…">
          {light.status === 'cancelled'
            ? 'Stopped before an answer was there.'
            : 'Working out the light of the patches.'}
        </Answer>
        <Recompute of="light" />
      </>
    );
  const answer = lightAnswer(outlook.result);
  return (
    <>
      <Answer
        figure={answer.figure}
        dark={answer.dark}
        aged={outlook.stale ? 'From before the last change.' : null}
      >
        {answer.sentence}
      </Answer>
      <Recompute of="outlook" />
    </>
  );
}
