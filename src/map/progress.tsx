import type { AppState, Computation } from '../state/model.ts';
import { useApp } from '../state/store.ts';
import './progress.css';

/** In the order in which they are told: the map that is looked at first. */
const WORK = [
  ['light', 'Working out the light'],
  ['sunTimes', 'Following the sun through a day of each month'],
  ['shelter', 'Working out the shelter'],
  ['stepped', 'Letting things grow in each other’s shelter'],
  ['coldAir', 'Letting the cold air run'],
  ['edgeProfile', 'Looking beside the edge'],
  ['fieldsCompared', 'Comparing the fields'],
  ['insurance', 'Looking for the latest year to plant'],
  ['bridges', 'Trying what bridges the first years'],
  ['beltYears', 'Following the belts as they grow'],
  ['beltSun', 'Finding what sun the belts take'],
  ['proposals', 'Looking for belts'],
  ['winterCuts', 'Looking for the winter’s cuts'],
  ['outlook', 'Looking ahead at the patches'],
  ['costs', 'Finding what each tree costs'],
  ['lightEnds', 'Finding what would change the light most'],
  ['sunTimeEnds', 'Finding what would change the day’s sun most'],
  ['shelterEnds', 'Finding what would change the shelter most'],
  ['yearsLook', 'Following the years'],
] as const satisfies readonly (readonly [keyof AppState, string])[];

/** What is being computed, how far it is, and a way to stop it. */
export function Progress() {
  const stepped = useApp((app) => app.stepped);
  const light = useApp((app) => app.light);
  const shelter = useApp((app) => app.shelter);
  const outlook = useApp((app) => app.outlook);
  const costs = useApp((app) => app.costs);
  const lightEnds = useApp((app) => app.lightEnds);
  const shelterEnds = useApp((app) => app.shelterEnds);
  const sunTimes = useApp((app) => app.sunTimes);
  const sunTimeEnds = useApp((app) => app.sunTimeEnds);
  const yearsLook = useApp((app) => app.yearsLook);
  const coldAir = useApp((app) => app.coldAir);
  const edgeProfile = useApp((app) => app.edgeProfile);
  const fieldsCompared = useApp((app) => app.fieldsCompared);
  const insurance = useApp((app) => app.insurance);
  const bridges = useApp((app) => app.bridges);
  const beltYears = useApp((app) => app.beltYears);
  const beltSun = useApp((app) => app.beltSun);
  const proposals = useApp((app) => app.proposals);
  const winterCuts = useApp((app) => app.winterCuts);
  const cancel = useApp((app) => app.cancelComputation);
  const all: Record<(typeof WORK)[number][0], Computation<unknown>> = {
    stepped,
    light,
    shelter,
    outlook,
    costs,
    lightEnds,
    shelterEnds,
    sunTimes,
    sunTimeEnds,
    yearsLook,
    proposals,
    winterCuts,
    coldAir,
    edgeProfile,
    fieldsCompared,
    insurance,
    bridges,
    beltYears,
    beltSun,
  };
  const running = WORK.filter(([name]) => all[name].status === 'computing');
  if (running.length === 0) return null;
  const [name, words] = running[0];
  const percent = Math.round(all[name].progress * 100);
  return (
    <div className="map-progress" data-testid="progress">
      <label>
        <span>{words}</span>
        <span className="map-progress-share">{percent} %</span>
        <progress value={percent} max={100} />
      </label>
      <button type="button" onClick={cancel} data-testid="progress-cancel">
        Stop
      </button>
    </div>
  );
}
