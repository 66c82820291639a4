import { useEffect, useRef } from 'react';
import { MapView } from '../../map/map-view.tsx';
import { stakesAnswer } from '../../state/shadow-stakes.ts';
import { useApp } from '../../state/store.ts';
import { windSpotsAnswer } from '../../state/wind-spots.ts';
import { Said } from '../messages/said.tsx';
import { PropertiesPanel } from '../properties/properties-panel.tsx';
import { StakesPanel } from '../stakes/stakes-panel.tsx';
import { STEPS } from '../steps.ts';
import { WindSpotsPanel } from '../wind-spots/wind-spots-panel.tsx';
import { YearStrip } from '../years/year-strip.tsx';
import { Dialogs } from './dialogs.tsx';
import { FileDrop } from './file-drop.tsx';
import { Header } from './header.tsx';
import { useShortcuts } from './shortcuts.ts';
import { StepsRail } from './steps-rail.tsx';
import { useTheme } from './theme.ts';
import '../theme.css';
import '../panel.css';
import './frame.css';

/** The whole screen: header, steps, panel, map, years. */
export function App() {
  useTheme();
  useShortcuts();
  return (
    <>
      <div className="frame">
        <Header />
        <StepsRail />
        <PanelSide />
        <main className="map-side">
          <OpenPanel />
          <MapView />
          <Said />
        </main>
        <YearStrip />
      </div>
      <Dialogs />
      <FileDrop />
    </>
  );
}

/** The chosen step's panel, or the chosen feature's properties over it. */
function PanelSide() {
  const step = useApp((app) => app.step);
  const open = useApp((app) => app.panelOpen);
  const show = useApp((app) => app.show);
  const chosen = useApp(
    (app) => app.document.features.find((feature) => feature.id === app.selection) ?? null,
  );
  const staked = useApp((app) => app.stakes !== null && app.stakes.of === app.selection);
  const spotted = useApp((app) => app.windSpots !== null && app.windSpots.of === app.selection);
  const { Panel, name } = STEPS.find((each) => each.id === step) ?? STEPS[0];
  const side = useRef<HTMLElement>(null);
  const shown = chosen ? `${chosen.id}${staked ? ', staked' : ''}${spotted ? ', wind' : ''}` : step;
  useEffect(() => {
    // Another panel begins at its question, wherever the last one was scrolled to.
    if (shown) side.current?.scrollTo(0, 0);
  }, [shown]);
  return (
    <aside ref={side} className="panel-side" data-open={open} aria-label="Panel">
      <div className="panel-bar">
        <b>{staked ? 'Shadow stakes' : spotted ? 'Wind spots' : name}</b>
        <button type="button" className="panel-close" onClick={() => show({ panelOpen: false })}>
          Show the map
        </button>
      </div>
      {chosen && staked ? (
        <StakesPanel key={chosen.id} feature={chosen} />
      ) : chosen && spotted ? (
        <WindSpotsPanel key={chosen.id} feature={chosen} />
      ) : chosen ? (
        <PropertiesPanel key={chosen.id} feature={chosen} />
      ) : (
        <Panel />
      )}
    </aside>
  );
}

/** On narrow screens the closed panel leaves its answer in one line over the map. */
function OpenPanel() {
  const open = useApp((app) => app.panelOpen);
  const step = useApp((app) => STEPS.find((each) => each.id === app.step) ?? STEPS[0]);
  const line = useApp(step.line);
  const stakes = useApp((app) => stakesAnswer(app)?.plan ?? null);
  const spots = useApp((app) => windSpotsAnswer(app)?.plan ?? null);
  const show = useApp((app) => app.show);
  if (open) return null;
  if (stakes)
    return (
      <button type="button" className="panel-open" onClick={() => show({ panelOpen: true })}>
        <b>Shadow stakes</b>: {stakes.stakes.length} of {stakes.thing.label}
      </button>
    );
  if (spots)
    return (
      <button type="button" className="panel-open" onClick={() => show({ panelOpen: true })}>
        <b>Wind spots</b>: {spots.spots.length} behind {spots.belt.label}
      </button>
    );
  return (
    <button type="button" className="panel-open" onClick={() => show({ panelOpen: true })}>
      <b>{step.name}</b>
      {line ? `: ${line}` : ''}
    </button>
  );
}
