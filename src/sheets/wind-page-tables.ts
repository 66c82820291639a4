import { fineDirectionWord } from '../units/compass.ts';
import type { ColumnBlock } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import { ruledTable, ruledTableHeightMm } from './ruled-table.ts';
import { hoursFigure, percentFigure, signsSeen, speedFigure } from './wind-climate-words.ts';
import type { WindPageInput, WindPageSeason } from './wind-page-input.ts';

const HEAD_MM = 3.4;
const TEXT_MM = 2.8;

/** A heading with what stands under it. */
export function headed(head: string, bodyMm: number, draw: ColumnBlock['draw']): ColumnBlock {
  return {
    heightMm: 5 + bodyMm,
    draw: (xMm, yMm) => [...textLines([head], xMm, yMm, HEAD_MM, 4, true), ...draw(xMm, yMm + 5)],
  };
}

/** Beaufort’s signs with the hours of each season. */
export function signTable(input: WindPageInput, innerMm: number): ColumnBlock {
  const { growing, rest, unit } = input;
  const columns = [
    { head: 'What is seen', widthMm: innerMm - 104 },
    { head: 'Beaufort', widthMm: 32 },
    { head: `from ${unit}`, widthMm: 18, figures: true },
    { head: 'growing season', widthMm: 27, figures: true },
    { head: 'rest of the year', widthMm: 27, figures: true },
  ];
  const rows = signsSeen(input.signs, [growing, rest]).map(({ force, name, fromMps, landSign }) => ({
    cells: [
      landSign,
      `${force}, ${name}`,
      speedFigure(fromMps, unit),
      hoursFigure(growing.hoursFromForce[force]),
      hoursFigure(rest.hoursFromForce[force]),
    ],
  }));
  return headed(
    'Hours in which at least this is seen in the open',
    ruledTableHeightMm(rows.length),
    (xMm, yMm) => ruledTable(columns, rows, xMm, yMm),
  );
}

/** Each direction with both seasons side by side. */
export function sectorTable({ growing, rest, unit }: WindPageInput, innerMm: number): ColumnBlock {
  const figures = [growing, rest].flatMap(() => [
    { head: '% of hours', widthMm: 17, figures: true },
    { head: `mean ${unit}`, widthMm: 17, figures: true },
    { head: 'Weibull c, k', widthMm: 24, figures: true },
  ]);
  const columns = [{ head: 'From the', widthMm: innerMm - 116 }, ...figures];
  const directions = [...new Set([...growing.sectors, ...rest.sectors].map(({ fromDeg }) => fromDeg))].sort(
    (a, b) => a - b,
  );
  const cellsOf = ({ sectors }: WindPageSeason, fromDeg: number): string[] => {
    const sector = sectors.find((each) => each.fromDeg === fromDeg);
    if (!sector || sector.frequency === 0) return ['', '', ''];
    return [
      (sector.frequency * 100).toFixed(1),
      speedFigure(sector.meanSpeedMps, unit),
      `${speedFigure(sector.weibullScaleMps, unit)}, ${sector.weibullK.toFixed(2)}`,
    ];
  };
  const total = (season: WindPageSeason) => [
    ((1 - season.calmShare) * 100).toFixed(1),
    speedFigure(season.meanSpeedMps, unit),
    `calm ${percentFigure(season.calmShare)} %`,
  ];
  const rows = [
    ...directions.map((fromDeg) => ({
      cells: [
        `${fineDirectionWord(fromDeg)}, ${Math.round(fromDeg)}°`,
        ...cellsOf(growing, fromDeg),
        ...cellsOf(rest, fromDeg),
      ],
    })),
    { cells: ['all, calms in the mean', ...total(growing), ...total(rest)], bold: true },
  ];
  const groupsMm = 4;
  return headed('Direction by direction', groupsMm + ruledTableHeightMm(rows.length), (xMm, yMm) => [
    ...(['growing season', 'rest of the year'] as const).map(
      (text, i): Mark => ({
        mark: 'text',
        atMm: [xMm + innerMm - (i === 0 ? 58 : 0), yMm + 2.6],
        text,
        sizeMm: TEXT_MM,
        bold: true,
        ink: INK,
        anchor: 'end',
      }),
    ),
    ...ruledTable(columns, rows, xMm, yMm + groupsMm),
  ]);
}
