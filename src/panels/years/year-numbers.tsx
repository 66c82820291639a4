import { LAST_SHOWN_YEAR } from '../../state/play-years.ts';

const EVERY_FIFTH = Array.from({ length: LAST_SHOWN_YEAR / 5 + 1 }, (_, fifth) => 5 * fifth);

/** The figures under the rules stay undistorted whatever the width, so they are not part of a stretched drawing. */
export function YearNumbers() {
  return (
    <svg className="year-numbers" aria-hidden="true">
      {EVERY_FIFTH.map((each) => (
        <text key={each} x={`${(each / LAST_SHOWN_YEAR) * 100}%`} y="57" textAnchor="middle">
          {each}
        </text>
      ))}
    </svg>
  );
}
