import { holdingsOf, type LayoutName } from '../layouts/holdings.ts';
import { commonPlanned } from '../site/common-planned.ts';
import type { SiteDocument } from '../site/document.ts';
import { layoutNames } from '../site/layout-names.ts';
import { formatLength } from './format-measure.ts';
import type { UnitSystem } from './model.ts';

/** What a layout holds of its own, in a few words; of what is common, how much of it is planned. */
export function layoutFacts(document: SiteDocument, layout: LayoutName, units: UnitSystem): string {
  if (layout === null) {
    const { length } = commonPlanned(document);
    return `${length === 0 ? 'nothing' : `${length} ${length === 1 ? 'thing' : 'things'}`} planned, and all that stands`;
  }
  const { treeCount, beltM, wallM, blocks, patches, plantings } = holdingsOf(document, layout);
  const counted = (count: number, one: string, many: string) =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  const metres = (lengthM: number, what: string) =>
    lengthM === 0 ? [] : [`${formatLength(lengthM, units)} of ${what}`];
  const parts = [
    ...counted(treeCount, 'tree', 'trees'),
    ...metres(beltM, 'belt'),
    ...metres(wallM, 'wall or net'),
    ...counted(blocks, 'block', 'blocks'),
    ...counted(patches, 'patch', 'patches'),
    ...counted(plantings, 'planting', 'plantings'),
  ];
  return parts.length === 0 ? 'nothing of its own yet' : parts.join(', ');
}

/** The wanted name, with a number behind it where it is taken. */
export function freeLayoutName(document: SiteDocument, wanted: string): string {
  const names = layoutNames(document);
  let name = wanted;
  for (let number = 2; names.includes(name); number++) name = `${wanted} ${number}`;
  return name;
}
