import { useApp } from '../../state/store.ts';
import { departureInWords } from '../../wind/shelter-guesses.ts';
import { BeltLists } from '../belts/belt-lists.tsx';
import { Answer } from '../parts/answer.tsx';
import { AskSpot } from '../parts/ask-spot.tsx';
import { DrawButtons } from '../parts/draw-buttons.tsx';
import { PanelHead, Section } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { MeasurableBelts } from '../wind-spots/measurable-belts.tsx';
import { BeltBrush } from './belt-brush.tsx';
import { BeltTable } from './belt-table.tsx';
import { EvaporationSection } from './evaporation-section.tsx';
import { fieldShelter } from './field-shelter.ts';
import { GuessList } from './guess-list.tsx';
import { ProposeSection } from './propose-section.tsx';
import { ShelterDetails } from './shelter-details.tsx';
import { ShelteredGround } from './sheltered-ground.tsx';
import { WindSection } from './wind-section.tsx';

/** Shelter: by how much the wind is cut, where, and by which belts. */
export function ShelterPanel() {
  return (
    <div className="panel">
      <PanelHead question="How well is the field sheltered?">
        Shelter comes first: belts take years to protect what is planted behind them.
      </PanelHead>
      <ShelterFigure />
      <ShelteredGround />
      <div className="buttons">
        <AskSpot purpose="wind">Wind from a spot</AskSpot>
      </div>
      <Section title="Draw">
        <DrawButtons
          items={[
            { label: 'A belt', kind: 'belt', geometry: 'LineString' },
            { label: 'A wall or net', kind: 'wall', geometry: 'LineString' },
            { label: 'A block', kind: 'block', geometry: 'Polygon' },
            { label: 'A building', kind: 'building', geometry: 'Polygon' },
          ]}
        />
        <BeltBrush />
      </Section>
      <ProposeSection />
      <BeltTable />
      <BeltLists />
      <MeasurableBelts />
      <EvaporationSection />
      <WindSection />
      <ShelterDetails />
      <GuessList />
    </div>
  );
}

const cutOrFaster = (percent: number, cut: string, faster: string): string =>
  percent < 0 ? `${faster} ${-percent} %` : `${cut} ${percent} %`;

function ShelterFigure() {
  const shelter = useApp((app) => app.shelter);
  const known = useApp(fieldShelter);
  const year = useApp((app) => app.year);
  const drawn = useApp((app) => app.document.features.length > 0);
  const departure = useApp((app) => departureInWords(app.shelterOptions));
  if (!drawn)
    return (
      <Answer figure="No ground yet">Draw a field in Ground, and its shelter is worked out at once.</Answer>
    );
  if (shelter.status === 'failed')
    return (
      <>
        <Answer figure="Not worked out" dark>
          {shelter.message}
        </Answer>
        <Recompute of="shelter" />
      </>
    );
  if (!known)
    return (
      <>
        <Answer figure="…">
          {shelter.result ? 'Draw a field, and its shelter is summed up here.' : 'Working out the shelter.'}
        </Answer>
        <Recompute of="shelter" />
      </>
    );
  const [growing, rest] = known.seasons.map((season) => Math.round(season.mean * 100));
  const name = known.field.properties.name ?? 'the field';
  return (
    <>
      <Answer
        figure={growing === 0 ? 'Open' : cutOrFaster(growing, 'Cut by', 'Faster by')}
        aged={shelter.stale ? 'From before the last change.' : null}
      >
        {growing === 0
          ? `Nothing slows the wind on ${name} in the growing season of year ${year}`
          : `is the wind on ${name} in the growing season of year ${year}`}
        {growing < 0 ? ' for the shape of the land' : ''},{' '}
        {rest === 0 ? 'hardly changed' : cutOrFaster(rest, 'cut by', 'faster by')} in the rest of the year.
        {departure ? ` ${departure}` : ''}
      </Answer>
      <Recompute of="shelter" />
    </>
  );
}
