import type { z } from 'zod';
import type { Kind } from '../document.ts';
import { beltRecord } from './belt.ts';
import { blockRecord } from './block.ts';
import { buildingRecord } from './building.ts';
import { fieldRecord } from './field.ts';
import { measureRecord } from './measure.ts';
import { patchRecord } from './patch.ts';
import { plantingRecord } from './planting.ts';
import type { KindRecord } from './property-field.ts';
import { treeRecord } from './tree.ts';
import { wallRecord } from './wall.ts';
import { keepOutRecord, pathRecord, serviceRecord } from './way.ts';

export interface RegisteredKind extends KindRecord {
  readonly schema: z.ZodType;
  /** What is taken for a property that is not given; some keys are parameters rather than properties. */
  readonly defaults: Readonly<Record<string, unknown>>;
}

/** Every kind of feature, in the order in which a person meets them. */
export const REGISTRY: Readonly<Record<Kind, RegisteredKind>> = {
  field: fieldRecord,
  belt: beltRecord,
  block: blockRecord,
  tree: treeRecord,
  building: buildingRecord,
  wall: wallRecord,
  patch: patchRecord,
  planting: plantingRecord,
  path: pathRecord,
  keepOut: keepOutRecord,
  service: serviceRecord,
  measure: measureRecord,
};

export const KINDS = Object.keys(REGISTRY) as readonly Kind[];

export const isKind = (value: unknown): value is Kind =>
  typeof value === 'string' && Object.hasOwn(REGISTRY, value);
