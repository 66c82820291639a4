import { useState } from 'react';
import type { LonLat } from '../../geo/frame.ts';
import { azimuthDeg, distanceM } from '../../geo/geodesic.ts';
import { groundFromSpots } from '../../geo/ground-from-spots.ts';
import { setSite } from '../../site/actions/set-site.ts';
import { placeBeside } from '../../site/places.ts';
import { lengthFrom, lengthIn, lengthUnit } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { NumberCell } from '../parts/number-cell.tsx';

interface Row {
  readonly key: number;
  readonly lonLat: LonLat;
  readonly levelM: number;
}

export const SPOTS_PURPOSE = 'spot levels';

/** Three or more points of known height, by metres from the site's middle or given on the map. */
export function SpotLevelsDialog() {
  const site = useApp((app) => app.document.site);
  const frame = useApp((app) => app.frame);
  const units = useApp((app) => app.unitSystem);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  const takeHand = useApp((app) => app.takeHand);
  const pointed = useApp((app) => app.pointed);
  const origin = useApp((app) => app.centre);
  const [rows, setRows] = useState<readonly Row[]>(() => {
    const known = (site.spotLevels ?? []).map((spot) => ({
      lonLat: [spot.lonLat[0], spot.lonLat[1]] as LonLat,
      levelM: spot.elevationM,
    }));
    const given = (pointed?.purpose === SPOTS_PURPOSE ? pointed.points : []).map((lonLat) => ({
      lonLat,
      levelM: known[0]?.levelM ?? 0,
    }));
    return [...known, ...given].map((row, key) => ({ ...row, key }));
  });
  const [wrong, setWrong] = useState<string | null>(null);
  const change = (key: number, part: Partial<Row>) =>
    setRows(rows.map((row) => (row.key === key ? { ...row, ...part } : row)));
  const add = () =>
    setRows([
      ...rows,
      {
        key: 1 + Math.max(-1, ...rows.map((row) => row.key)),
        lonLat: placeBeside(origin, 0, rows.length * 10),
        levelM: rows.at(-1)?.levelM ?? 0,
      },
    ]);
  const close = () => {
    takeHand({ doing: 'looking' });
    show({ dialog: null });
  };
  const take = () => {
    const spots = rows.map(({ lonLat: [lon, lat], levelM }) => ({
      lonLat: [lon, lat] as [number, number],
      elevationM: levelM,
    }));
    try {
      if (spots.length > 0) groundFromSpots(spots, frame, { west: -1, south: -1, east: 1, north: 1 });
      edit('Set spot levels', (document) =>
        setSite(document, { spotLevels: spots.length > 0 ? spots : undefined }),
      );
      close();
    } catch (reason) {
      setWrong((reason as Error).message);
    }
  };
  const cell = (row: Row, valueM: number, name: string, moved: (valueM: number) => Partial<Row>) => (
    <td>
      <NumberCell
        label={`${name}, point ${rows.indexOf(row) + 1}`}
        value={lengthIn(valueM, units)}
        digits={2}
        onChange={(value) => change(row.key, moved(lengthFrom(value, units)))}
      />
    </td>
  );
  return (
    <Dialog
      title="Spot levels"
      onClose={close}
      footer={
        <button type="button" className="main" onClick={take}>
          Use these levels
        </button>
      }
    >
      <p className="soft">
        Heights of three points or more, measured with a level, a hose or read off a map. Any zero will do:
        only the differences shape the ground. Places are counted from the middle of the site.
      </p>
      {rows.length > 0 ? (
        <table>
          <thead>
            <tr>
              <th scope="col">{lengthUnit(units)} to the east</th>
              <th scope="col">{lengthUnit(units)} to the north</th>
              <th scope="col">level, {lengthUnit(units)}</th>
              <th scope="col">
                <span className="unseen">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => {
              const [eastM, northM] = metresFrom(origin, row.lonLat);
              return (
                <tr key={row.key}>
                  {cell(row, eastM, 'East', (value) => ({ lonLat: placeBeside(origin, value, northM) }))}
                  {cell(row, northM, 'North', (value) => ({ lonLat: placeBeside(origin, eastM, value) }))}
                  {cell(row, row.levelM, 'Level', (levelM) => ({ levelM }))}
                  <td>
                    <button
                      type="button"
                      className="link"
                      onClick={() => setRows(rows.filter((each) => each !== row))}
                    >
                      Take out
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      ) : null}
      {wrong ? <p className="field-wrong">{wrong}</p> : null}
      <div className="buttons">
        <button type="button" onClick={add}>
          Another point
        </button>
        <button
          type="button"
          onClick={() => {
            takeHand({ doing: 'pointing', purpose: SPOTS_PURPOSE, pointsWanted: 3 });
            show({ dialog: null });
          }}
        >
          Give three points on the map
        </button>
      </div>
    </Dialog>
  );
}

/** Metres to the true east and north of a place. */
function metresFrom(origin: LonLat, place: LonLat): [number, number] {
  const lengthM = distanceM(origin, place);
  const azimuthRad = (azimuthDeg(origin, place) * Math.PI) / 180;
  return [lengthM * Math.sin(azimuthRad), lengthM * Math.cos(azimuthRad)];
}
