/**
 * A field of light that stays: its sums lie in the kernel's memory, so that it can follow a hand. Optical depths add,
 * so a thing that moves is taken out of the sums once, and each place it is held to is laid over what the rest lets
 * through. Only cells in the thing's own shadow are looked at, with the rays and the paths of a computation from
 * scratch: the difference is rounding.
 */
import type { CrownSet } from '../crowns/crown-set.ts';
import type { PrismSet } from '../crowns/prism-set.ts';
import { type Steps, within } from '../numeric/steps.ts';
import { cellsWithoutLight } from './building-cells.ts';
import { LOOKING_AROUND } from './compute-light.ts';
import { EDGE, PLANE_BYTES } from './kernel/assembly/layout.ts';
import {
  type LoadedRay,
  type LoadedThings,
  type LoadedTile,
  loadThings,
  loadTile,
  noThings,
} from './kernel/load.ts';
import { classesThatMatter } from './leaf-groups.ts';
import { LIVE, lightPlan, SKY_SLOTS } from './light-plan.ts';
import type { LightRequest, LightResult } from './light-types.ts';
import {
  type Around,
  addYear,
  castBehind,
  castThings,
  LAYER_OWN,
  type LoadedScene,
  landHidesAll,
  layAround,
  loadScene,
  lookAround,
  PAUSE_MS,
  WHERE_TOUCHED,
} from './loaded-scene.ts';
import {
  changedCrowns,
  changedPrisms,
  inRange,
  isEmpty,
  isNone,
  isSame,
  type ListChange,
  outside,
  type Range,
  rangeOf,
  widenedTo,
} from './scene-change.ts';
import { ALL_ROWS, chosenRows, shadowTile } from './shadow-tile.ts';
import { type BandWriter, bandWriter, emptyResult, writeBands } from './write-bands.ts';

interface FieldTile {
  readonly at: LoadedTile;
  readonly row0: number;
  readonly column0: number;
  /** Address of the sums without what is in hand; 0 until something has been. */
  without: number;
  /** What is in hand takes light here. */
  laidOn: boolean;
}

/** Where the things in hand lie in the scene's lists. */
interface InHand {
  readonly crowns: Range;
  readonly prisms: Range;
}

export interface LightField {
  readonly loaded: LoadedScene;
  readonly tiles: readonly FieldTile[];
  readonly around: Around;
  readonly writer: BandWriter;
  readonly slots: number;
  readonly result: LightResult;
  /** The things in hand, in the kernel; all others are the loaded scene's. */
  readonly own: LoadedThings;
  /** What stands now. */
  crowns: CrownSet;
  prisms: PrismSet;
  inHand: InHand | null;
  /** What is in hand is laid along all rays, not along those that follow a hand. */
  exact: boolean;
}

/** Computes the light of a request and keeps what is needed to change it. */
export function* openLightField(request: LightRequest): Steps<LightField> {
  const { scene, grid, readingHeightM, rows = ALL_ROWS } = request;
  const plan = lightPlan(scene);
  yield 0;
  const loaded = loadScene(scene, plan, lightPlan(scene, LIVE));
  yield 0;
  const { kernel, z0 } = loaded;
  const around = yield* within(lookAround(scene, grid, readingHeightM, true), 0, LOOKING_AROUND);
  const writer = bandWriter(kernel, plan);
  const slots = SKY_SLOTS + plan.skyGroups;
  const result = emptyResult(plan, grid, rows);
  const tiles: FieldTile[] = [];
  for (let row0 = 0; row0 < chosenRows(grid, rows); row0 += EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += EDGE) {
      const tile = shadowTile(grid, rows, column0, row0, scene.ground, readingHeightM);
      const land = new Int32Array(loaded.rays.length + loaded.liveRays.length);
      const at = { ...loadTile(kernel, tile, slots, z0), land };
      tiles.push({
        at,
        row0,
        column0,
        without: 0,
        laidOn: false,
      });
    }
  const field: LightField = {
    loaded,
    tiles,
    around,
    writer,
    slots,
    result,
    own: noThings(),
    crowns: scene.crowns,
    prisms: scene.prisms,
    inHand: null,
    exact: true,
  };
  for (let k = 0; k < tiles.length; k++) {
    const tile = tiles[k];
    const share = (1 - LOOKING_AROUND) / tiles.length;
    yield* within(addYear(loaded, tile.at, around), LOOKING_AROUND + k * share, share);
    writeTile(field, tile, false);
  }
  return field;
}

/** A copy of the field's answer, to be handed on. */
export const answerOf = ({ result }: LightField): LightResult => structuredClone(result);

/** Where more of a scene than this is other than it was, a computation from scratch is no slower. */
const MOST_CHANGED = 0.3;

/**
 * Whether a field can follow to other things: phases of the leaves are grouped by the classes that stand in the scene,
 * and not too much may have changed at once.
 */
export function canFollow(field: LightField, crowns: CrownSet, prisms: PrismSet): boolean {
  const { scene } = field.loaded;
  if (String(classesThatMatter(scene)) !== String(classesThatMatter({ ...scene, crowns, prisms })))
    return false;
  const change = whatChanges(field, crowns, prisms);
  if (!change?.newInHand) return true;
  const sizes = [change.crowns.removed, change.prisms.removed, change.crowns.added, change.prisms.added].map(
    ({ from, to }) => to - from,
  );
  const changed = Math.max(sizes[0] + sizes[1], sizes[2] + sizes[3]);
  return changed <= FEW || changed <= MOST_CHANGED * (field.crowns.count + field.prisms.count);
}
/** So many may always change. */
const FEW = 20;

/**
 * Replaces what stands in the field. What was changed last stays in hand: changing it again costs its own shadow alone.
 * @param live what is in hand is laid along fewer rays, until the field is asked to be exact
 * @throws BadInputError as loading the scene does
 */
export function* changeLightField(
  field: LightField,
  crowns: CrownSet,
  prisms: PrismSet,
  live = false,
): Steps<void> {
  const change = whatChanges(field, crowns, prisms);
  if (!change) return;
  if (change.isNone && (field.exact || live)) return;
  if (change.newInHand) yield* lift(field, change.crowns.removed, change.prisms.removed);
  const solidMoved = hasSolid(field.prisms, change.prisms.removed) || hasSolid(prisms, change.prisms.added);
  const added = { crowns: inRange(change.crowns.added), prisms: inRange(change.prisms.added) };
  loadThings(field.loaded.kernel, field.own, crowns, prisms, added, field.loaded.z0);
  field.crowns = crowns;
  field.prisms = prisms;
  field.inHand = { crowns: change.crowns.added, prisms: change.prisms.added };
  yield* layOwn(field, live, solidMoved, !change.newInHand);
}

/**
 * Takes a thing in hand before it is changed, so that the first step of a drag costs no more than the others.
 * @param thing its number in the scene; one whose pieces lie apart in the scene's lists is left alone
 */
export function* takeInHand(field: LightField, thing: number): Steps<void> {
  const { crowns, prisms, inHand } = field;
  const ofCrowns = rangeOf(crowns.thing, crowns.count, thing);
  const ofPrisms = rangeOf(prisms.thing, prisms.count, thing);
  if (!ofCrowns || !ofPrisms || (isEmpty(ofCrowns) && isEmpty(ofPrisms))) return;
  if (inHand && isSame(inHand.crowns, ofCrowns) && isSame(inHand.prisms, ofPrisms)) return;
  yield* lift(field, ofCrowns, ofPrisms);
  field.inHand = { crowns: ofCrowns, prisms: ofPrisms };
  yield* layOwn(field, false, false, false);
}

/** Takes things out of the sums; what was in hand before stays as it is. */
function* lift(field: LightField, ofCrowns: Range, ofPrisms: Range): Steps<void> {
  const { loaded, tiles, own, crowns, prisms } = field;
  const { kernel, z0, things } = loaded;
  if (!field.exact) yield* layOwn(field, false);
  const rest = { crowns: outside(ofCrowns, crowns.count), prisms: outside(ofPrisms, prisms.count) };
  loadThings(kernel, things, crowns, prisms, rest, z0);
  loadThings(kernel, own, crowns, prisms, { crowns: inRange(ofCrowns), prisms: inRange(ofPrisms) }, z0);
  for (const tile of tiles) {
    tile.laidOn = yield* addOwn(field, tile, -1, loaded.rays);
    if (tile.without === 0) tile.without = kernel.take(field.slots * PLANE_BYTES);
    copySums(field, tile.at.sums, tile.without);
  }
}

/**
 * Lays what is in hand over the rest and writes what changes.
 * @param laid it is laid already, and taken up again
 */
function* layOwn(field: LightField, live: boolean, solidMoved = false, laid = true): Steps<void> {
  const { liveRays, rays } = field.loaded;
  for (const tile of field.tiles) {
    const before = tile.laidOn;
    if (before && laid) copySums(field, tile.without, tile.at.sums);
    tile.laidOn = yield* addOwn(field, tile, 1, live ? liveRays : rays);
    if (before || tile.laidOn || solidMoved) writeTile(field, tile, !solidMoved);
  }
  field.exact = !live;
}

interface SceneChange {
  readonly crowns: ListChange;
  readonly prisms: ListChange;
  /** Other things are taken in hand than those that are. */
  readonly newInHand: boolean;
  /** Nothing is other than it was; what is in hand may be laid again. */
  readonly isNone: boolean;
}

/** Null where nothing changes and nothing is in hand. */
function whatChanges(
  { inHand, crowns, prisms }: LightField,
  toCrowns: CrownSet,
  toPrisms: PrismSet,
): SceneChange | null {
  const ofCrowns = changedCrowns(crowns, toCrowns);
  const ofPrisms = changedPrisms(prisms, toPrisms);
  const none = isNone(ofCrowns) && isNone(ofPrisms);
  if (none && !inHand) return null;
  const heldCrowns = inHand && widenedTo(inHand.crowns, crowns.count, toCrowns.count, ofCrowns);
  const heldPrisms = inHand && widenedTo(inHand.prisms, prisms.count, toPrisms.count, ofPrisms);
  if (heldCrowns && heldPrisms)
    return { crowns: heldCrowns, prisms: heldPrisms, newInHand: false, isNone: none };
  return { crowns: ofCrowns, prisms: ofPrisms, newInHand: true, isNone: none };
}

/** Adds what the things in hand take, or takes it back (sign -1). @returns whether they take anything here. */
function* addOwn(
  field: LightField,
  tile: FieldTile,
  sign: 1 | -1,
  rays: readonly LoadedRay[],
): Steps<boolean> {
  const { loaded, own, around } = field;
  const { kernel, things } = loaded;
  let any = false;
  let pausedAt = performance.now();
  for (let k = 0; k < rays.length; k++) {
    const ray = rays[k];
    if (landHidesAll(tile.at, ray)) continue;
    castThings(loaded, own, tile.at, ray, LAYER_OWN);
    if (kernel.anyTouched()) {
      any = true;
      layAround(loaded, tile.at, ray, around, -1, WHERE_TOUCHED);
      castBehind(loaded, things, own, tile.at, ray);
      kernel.addChange(tile.at.address, ray.address, sign);
    }
    if ((k & 63) !== 63 || performance.now() - pausedAt < PAUSE_MS) continue;
    yield k / rays.length;
    pausedAt = performance.now();
  }
  return any;
}

function copySums({ loaded, slots }: LightField, from: number, to: number): void {
  loaded.kernel.bytes.copyWithin(to, from, from + slots * PLANE_BYTES);
}

function writeTile(field: LightField, { at, row0, column0 }: FieldTile, changed: boolean): void {
  const { loaded, prisms, writer, result } = field;
  writeBands(loaded.kernel, writer, at, result, row0, column0, cellsWithoutLight(at.tile, prisms), changed);
}

function hasSolid(prisms: PrismSet, { from, to }: Range): boolean {
  return prisms.solid.subarray(from, to).includes(1);
}
