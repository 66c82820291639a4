import papaparse from 'papaparse';
import { PACES } from '../growth/pace-band.ts';
import type { LayoutComparison } from '../layouts/comparison.ts';
import { lastYearOf } from '../layouts/comparison.ts';
import { holdingsOf, ownFeatures } from '../layouts/holdings.ts';
import {
  answerOf,
  differsWords,
  LAYOUTS_REST_ON,
  layoutWords,
  missingPricesWords,
} from '../layouts/layout-words.ts';
import { differenceWords, valueWords } from '../layouts/measure-words.ts';
import { differenceOf, differs, isBand, type MeasureValue, measuresOf } from '../layouts/measures.ts';
import { commonPlanned } from '../site/common-planned.ts';
import type { SiteDocument } from '../site/document.ts';
import { layoutNames } from '../site/layout-names.ts';

const metres = (lengthM: number): string => `${Math.round(lengthM)} m`;

const rowsOf = (document: SiteDocument) =>
  layoutNames(document).map((name) => {
    const { treeCount, beltM, wallM } = holdingsOf(document, name);
    return { name, things: ownFeatures(document, name).length, trees: treeCount, beltM, wallM };
  });

/** The layouts that there are, one a line. */
export function layoutListText(document: SiteDocument): string {
  const rows = rowsOf(document);
  const lines = [
    rows.length === 0
      ? `${document.site.name}: no layouts; everything is common.`
      : `${document.site.name}: ${rows.length} layout${rows.length === 1 ? '' : 's'}, over ${commonPlanned(document).length} planned things that are common to all`,
    ...rows.map(
      ({ name, things, trees, beltM, wallM }) =>
        `  ${name}: ${things} things of its own, of these ${trees} trees, ${metres(beltM)} of belt, ${metres(wallM)} of wall, fence or net`,
    ),
  ];
  return `${lines.join('\n')}\n`;
}

export const layoutListJson = (document: SiteDocument): string =>
  `${JSON.stringify({ site: document.site.name, layouts: rowsOf(document).map((row) => ({ ...row, beltM: rounded(row.beltM), wallM: rounded(row.wallM) })) }, null, 2)}\n`;

/** Two layouts beside each other, for a person to read: the answer, then a table of what differs and what does not. */
export function layoutsText(comparison: LayoutComparison, siteName: string): string {
  const { sides, baseYear, fieldName } = comparison;
  const format = { metres, currency: comparison.currency };
  const lastYear = lastYearOf(sides[0].years);
  const cells = measuresOf(comparison).map((measure) => ({
    differs: differs(measure),
    cells: [
      measure.what,
      ...measure.values.map((value) => valueWords(value, measure.unit, format, lastYear)),
      differenceWords(measure, format),
    ],
  }));
  const head = ['', ...sides.map(({ layout }) => layoutWords(layout)), 'second less first'];
  const widths = head.map((title, column) =>
    Math.max(title.length, ...cells.map((row) => row.cells[column].length)),
  );
  const line = (row: readonly string[]) =>
    `  ${row.map((cell, column) => cell.padEnd(widths[column])).join('  ')}`.trimEnd();
  const part = (title: string, wanted: boolean) => {
    const rows = cells.filter((row) => row.differs === wanted);
    return rows.length === 0 ? [] : ['', title, line(head), ...rows.map((row) => line(row.cells))];
  };
  const missing = missingPricesWords(comparison);
  const lines = [
    `${siteName}: ${sides.map(({ layout }) => layoutWords(layout)).join(' and ')}, on ${fieldName} (year 0 is ${baseYear})`,
    answerOf(comparison).says,
    differsWords(comparison),
    ...part('What differs', true),
    ...part('The same in both', false),
    '',
    ...(missing ? [`${missing} (site.prices: perTree, perBeltM, perWallM, currency)`] : []),
    LAYOUTS_REST_ON,
  ];
  return `${lines.join('\n')}\n`;
}

const rounded = (value: number): number => Number(value.toFixed(4));
const data = (value: MeasureValue) => {
  if (!isBand(value)) return value === null ? null : rounded(value);
  const at = (one: number | null) => (one === null ? null : rounded(one));
  return { slow: at(value.slow), usual: at(value.usual), fast: at(value.fast) };
};

/** The same as data. Shares 0 to 1, lengths m, years after the base year unless the unit is `calendar`. */
export function layoutsJson(comparison: LayoutComparison, siteName: string): string {
  const { sides, baseYear, fieldName, year, wantedShare, currency, differs: things } = comparison;
  const ids = (features: readonly { readonly id: unknown }[]) => features.map(({ id }) => id);
  const answer = {
    site: siteName,
    baseYear,
    field: fieldName,
    year,
    shareInShelterWanted: wantedShare,
    layouts: sides.map(({ layout }) => layout),
    says: answerOf(comparison).says,
    currency: currency || null,
    pricesMissing: missingPricesWords(comparison),
    things: {
      onlyInFirst: ids(things.onlyA),
      onlyInSecond: ids(things.onlyB),
      changed: things.changed.map(({ a, b, moved, properties }) => ({
        first: a.id,
        second: b.id,
        moved,
        properties,
      })),
    },
    measures: measuresOf(comparison).map((measure) => ({
      group: measure.group,
      what: measure.what,
      unit: measure.unit,
      first: data(measure.values[0]),
      second: data(measure.values[1]),
      difference: data(differenceOf(measure)),
      differs: differs(measure),
    })),
    shelterByYear: sides.map(({ years }) => ({
      years: years.years,
      shareOfField: Object.fromEntries(PACES.map((pace) => [pace, years.shelteredShare[pace].map(rounded)])),
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

/** The table as CSV: a figure with a band takes a line for each growth. */
export function layoutsCsv(comparison: LayoutComparison): string {
  const [a, b] = comparison.sides;
  const rows = measuresOf(comparison).flatMap((measure) => {
    const values = [...measure.values, differenceOf(measure)];
    const banded = values.some(isBand);
    return (banded ? PACES : ['' as const]).map((growth) => [
      measure.group,
      measure.what,
      measure.unit,
      growth,
      ...values.map((value) => {
        const one = isBand(value) ? (growth === '' ? null : value[growth]) : value;
        return one === null ? '' : rounded(one);
      }),
    ]);
  });
  const head = [
    'group',
    'what',
    'unit',
    'growth',
    layoutWords(a.layout),
    layoutWords(b.layout),
    'second less first',
  ];
  return `${papaparse.unparse([head, ...rows], { newline: '\n' })}\n`;
}
