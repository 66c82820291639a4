import { setSite } from '../../site/actions/set-site.ts';
import type { WindRecord, WindSector } from '../../site/records/site.ts';
import { speedFrom, speedIn, speedUnit } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { fineDirectionWord } from '../../units/compass.ts';
import { NumberCell } from '../parts/number-cell.tsx';

const SEASON_WORDS = { growing: 'growing season', rest: 'rest of the year', year: 'whole year' } as const;

/** The sectors as the site holds them, each figure to be corrected. */
export function SectorTable(props: { wind: WindRecord }) {
  const { wind } = props;
  const sectors = wind.sectors ?? [];
  const units = useApp((app) => app.unitSystem);
  const edit = useApp((app) => app.edit);
  const change = (index: number, part: Partial<WindSector>) =>
    edit('Correct the wind', (site) =>
      setSite(site, {
        wind: {
          ...wind,
          sectors: sectors.map((sector, i) => (i === index ? { ...sector, ...part } : sector)),
        },
      }),
    );
  const seasons = ['growing', 'rest', 'year'] as const;
  return (
    <>
      {seasons.map((season) => {
        const rows = sectors
          .map((sector, index) => ({ sector, index }))
          .filter(({ sector }) => (sector.season ?? 'year') === season);
        if (rows.length === 0) return null;
        return (
          <table key={season} className="sectors">
            <caption>{SEASON_WORDS[season][0].toUpperCase() + SEASON_WORDS[season].slice(1)}</caption>
            <thead>
              <tr>
                <th scope="col">From the</th>
                <th scope="col">% of hours</th>
                <th scope="col">mean {speedUnit(units)}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ sector, index }) => {
                const from = fineDirectionWord(sector.fromDeg);
                return (
                  <tr key={index}>
                    <th scope="row">
                      {from} <small className="soft">{Math.round(sector.fromDeg)}°</small>
                    </th>
                    <td>
                      <NumberCell
                        label={`Percent of hours from the ${from}`}
                        value={sector.frequency * 100}
                        digits={1}
                        min={0}
                        max={100}
                        onChange={(percent) => change(index, { frequency: percent / 100 })}
                      />
                    </td>
                    <td>
                      <NumberCell
                        label={`Mean speed from the ${from}, ${speedUnit(units)}`}
                        value={speedIn(sector.meanSpeedMps, units)}
                        digits={1}
                        min={0}
                        max={speedIn(60, units)}
                        onChange={(speed) => change(index, { meanSpeedMps: speedFrom(speed, units) })}
                      />
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        );
      })}
    </>
  );
}
