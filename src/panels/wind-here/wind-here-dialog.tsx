import { useState } from 'react';
import { lookUp } from '../../numeric/even-table.ts';
import { reliefThanOpen } from '../../sheets/evaporation-words.ts';
import { cutWords, withoutWords } from '../../sheets/wind-here-words.ts';
import { evaporationOf } from '../../state/evaporation.ts';
import { formatDepth, formatLength, formatSpeed } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { appStore, useApp } from '../../state/store.ts';
import { windBand } from '../../state/wind-band.ts';
import type { WindFound } from '../../state/wind-found.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { WindHereRose } from './wind-here-rose.tsx';
import { DirectionTable, type Season, WorthTable } from './wind-here-tables.tsx';
import './wind-here.css';

const SEASONS = [
  { value: '0', label: 'growing season' },
  { value: '1', label: 'rest of the year' },
  { value: '2', label: 'whole year' },
] as const;
const IN_WORDS = ['in the growing season', 'in the rest of the year', 'over the year'] as const;

/** From where a spot is sheltered, and by what. */
export function WindHereDialog() {
  const windHere = useApp((app) => app.windHere);
  const windAt = useApp((app) => app.windAt);
  const units = useApp((app) => app.unitSystem);
  const year = useApp((app) => app.year);
  const show = useApp((app) => app.show);
  const [season, setSeason] = useState<Season>(() => windBand(appStore.getState()));
  const found = windHere.result?.lonLat === windAt ? windHere.result : null;
  const known = found !== null && !Number.isNaN(found.at.windShare[2]);
  return (
    <Dialog title="Wind from here" widest onClose={() => show({ dialog: null })}>
      {windHere.status === 'failed' ? (
        <>
          <Answer figure="Not worked out" dark>
            {windHere.message}
          </Answer>
          <Recompute of="windHere" />
        </>
      ) : !found ? (
        <Answer figure="…">Looking into the wind: {Math.round(100 * windHere.progress)} %.</Answer>
      ) : known ? (
        <Answer
          figure={capital(cutWords(found.at.windShare[season]))}
          aged={windHere.stale ? 'From before the last change.' : null}
        >
          {sentence(found, season)}
        </Answer>
      ) : (
        <Answer figure="No answer here" dark>
          A building stands on this spot, or its ground is not known. Choose a spot beside it.
        </Answer>
      )}
      <div className="wind-here-choices">
        <SelectField
          label="Season"
          value={`${season}` as '0' | '1' | '2'}
          options={SEASONS}
          onChange={(value) => setSeason(Number(value) as Season)}
        />
        <p className="small soft">
          Year {year} after planting
          {found
            ? `, ${formatLength(found.at.readingHeightM, units)} above the ground; open wind at ${formatLength(found.at.climateHeightM, units)}`
            : ''}
          .
        </p>
      </div>
      {found && known ? (
        <div className="wind-here-under">
          <div>
            <WindHereRose
              rays={found.at.sectors.map(({ fromDeg, frequency, openSpeedMps, share }) => ({
                fromDeg,
                frequency: frequency[season],
                openSpeedMps: openSpeedMps[season],
                share: share[season],
              }))}
              caption={`The wind ${IN_WORDS[season]}`}
              units={units}
            />
            <WorthTable found={found} season={season} units={units} />
          </div>
          <div>
            <DirectionTable found={found} season={season} units={units} />
            <WaterHere share={found.at.windShare[0]} units={units} />
            <p className="caution">
              A shelter figure never means that a tree is sound, and what a neighbour owns, a neighbour may
              fell.
            </p>
          </div>
        </div>
      ) : null}
    </Dialog>
  );

  function sentence({ at, things }: WindFound, of: Season): string {
    const lead = at.sectors.toSorted(
      (a, b) => b.frequency[of] * b.openSpeedMps[of] - a.frequency[of] * a.openSpeedMps[of],
    )[0];
    const most = at.things.toSorted((a, b) => b.comesBack[of] - a.comesBack[of])[0];
    const where = `is the wind here ${IN_WORDS[of]}.`;
    const from = lead
      ? ` Most of it comes from the ${fineDirectionWord(lead.fromDeg)}: ${formatSpeed(lead.openSpeedMps[of], units)} in the open, ${cutWords(lead.share[of])} here.`
      : '';
    const without =
      most && most.comesBack[of] >= 0.01
        ? ` ${withoutWords(things[most.thing].label, at.windShare[of] + most.comesBack[of])}`
        : '';
    // A figure keeps its unit beside it.
    return `${where}${from}${without}`.replaceAll(/(\d) (?=%|m\/s|km\/h|mph)/g, '$1\u00a0');
  }
}

/** What the spot's shelter saves of the water that grass gives off in the growing season. */
function WaterHere({ share, units }: { readonly share: number; readonly units: UnitSystem }) {
  const evaporation = useApp(evaporationOf);
  if (!evaporation) return null;
  if (!evaporation.curve) return <p className="small soft">{evaporation.missing}</p>;
  const openMm = lookUp(evaporation.curve.seasonMm, 1);
  const hereMm = lookUp(evaporation.curve.seasonMm, share);
  const mm = (depthMm: number) => formatDepth(depthMm, units);
  return (
    <p>
      With this wind, grass gives off {mm(hereMm)} over the growing season,{' '}
      {reliefThanOpen(openMm, hereMm, mm)} in the same sun.
    </p>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
