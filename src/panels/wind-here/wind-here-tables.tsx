import {
  awayWords,
  cutWords,
  ownedWords,
  PARTS_EXPLAINED,
  shelterPart,
} from '../../sheets/wind-here-words.ts';
import { formatLength, formatShare, formatSpeed } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import type { WindFound } from '../../state/wind-found.ts';
import { fineDirectionWord } from '../../units/compass.ts';

/** 0 growing season, 1 rest of the year, 2 year. */
export type Season = 0 | 1 | 2;

interface Props {
  readonly found: WindFound;
  readonly season: Season;
  readonly units: UnitSystem;
}

/** A thing that does less than this in a direction is not named there. */
const LEAST_CUT = 0.01;
/** Trees and land are named from here on. */
const LEAST_TOLD = 0.05;

/** Each direction: how the wind blows in the open, what is left, and what takes it. */
export function DirectionTable({ found, season, units }: Props) {
  return (
    <table>
      <caption>From each direction, and what slows it most</caption>
      <thead>
        <tr>
          <th scope="col">From</th>
          <th scope="col" className="number hours">
            Of the hours
          </th>
          <th scope="col" className="number">
            Open wind
          </th>
          <th scope="col" className="number">
            Here
          </th>
        </tr>
      </thead>
      <tbody>
        {found.at.sectors.map((sector) => {
          const by = sector.by.filter(({ cut }) => cut[season] >= LEAST_CUT);
          const more = by.length - 1;
          return (
            <tr key={sector.fromDeg}>
              <th scope="row">
                {fineDirectionWord(sector.fromDeg)}
                {by.length > 0 ? (
                  <small className="soft">
                    {found.things[by[0].thing].label},{' '}
                    {awayWords(by[0].distanceM, by[0].heightM, (m) => formatLength(m, units))}
                    {more > 0 ? `; ${more} more` : ''}
                  </small>
                ) : null}
                {Math.abs(1 - sector.shareWithoutThings[season]) >= LEAST_TOLD ? (
                  <small className="soft">
                    trees and the lie of the land alone: {cutWords(sector.shareWithoutThings[season])}
                  </small>
                ) : null}
              </th>
              <td className="number hours">{formatShare(sector.frequency[season])}</td>
              <td className="number">{formatSpeed(sector.openSpeedMps[season], units)}</td>
              <td className="number">{cutWords(sector.share[season])}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What each thing is worth here: the wind if it alone were gone, and the part of the shelter that goes with it. */
export function WorthTable({ found, season }: Props) {
  const share = found.at.windShare[season];
  const worth = found.at.things
    .filter(({ comesBack }) => Math.abs(comesBack[season]) >= 0.005)
    .toSorted((a, b) => b.comesBack[season] - a.comesBack[season]);
  if (worth.length === 0)
    return <p className="soft">Nothing that stands around shelters this spot by itself.</p>;
  const ground = 1 - found.at.shareWithoutThings[season];
  return (
    <>
      <table>
        <caption>If it alone were gone</caption>
        <thead>
          <tr>
            <th scope="col">What shelters</th>
            <th scope="col" className="number">
              Wind would be
            </th>
            <th scope="col" className="number">
              Shelter lost
            </th>
          </tr>
        </thead>
        <tbody>
          {worth.map(({ thing, comesBack }) => {
            const { label, owner } = found.things[thing];
            const part = shelterPart(comesBack[season], share);
            return (
              <tr key={thing}>
                <th scope="row">{ownedWords(label, owner)}</th>
                <td className="number">{cutWords(share + comesBack[season])}</td>
                <td className="number">{part === null ? '–' : formatShare(part)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {Math.abs(ground) >= 0.005 ? (
        <p className="small soft">
          Without any belt, wood, wall or building the wind here would be{' '}
          {cutWords(found.at.shareWithoutThings[season])}: trees and the lie of the land.
        </p>
      ) : null}
      <p className="small soft">{PARTS_EXPLAINED}</p>
    </>
  );
}
