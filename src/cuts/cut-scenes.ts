/** The scenes in which everything stands that may be left of a plant, and any choice out of them. */
import { CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { PRISM_STRIDE, type PrismSet } from '../crowns/prism-set.ts';
import type { LightScene } from '../light/light-types.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument, SiteFeature } from '../site/document.ts';
import { withCare } from './cut-options.ts';
import type { CutPlant } from './cut-types.ts';

/** One season: everything that stands, and beside each plant what each option leaves of it. */
export interface CutScene {
  readonly year: number;
  readonly scene: LightScene;
  /** By thing: the plant that it is, -1: one that nobody cuts. */
  readonly plantOf: Int16Array;
  /** By thing: the option that leaves this of the plant, -1: uncut. */
  readonly optionOf: Int16Array;
}

/** The document with a twin of each plant for each of its options. */
function withTwins(
  document: SiteDocument,
  plants: readonly CutPlant[],
): { document: SiteDocument; twins: ReadonlyMap<FeatureId, readonly [plant: number, option: number]> } {
  const twins = new Map<FeatureId, readonly [number, number]>();
  const byId = new Map(document.features.map((feature) => [feature.id, feature]));
  const added: SiteFeature[] = [];
  plants.forEach((plant, p) => {
    twins.set(plant.id, [p, -1]);
    const feature = byId.get(plant.id) as Parameters<typeof withCare>[0];
    plant.options.forEach(({ care }, o) => {
      const id = `${plant.id} ${o}\u0000`;
      twins.set(id, [p, o]);
      added.push({ ...withCare(feature, care), id } as SiteFeature);
    });
  });
  return { document: { ...document, features: [...document.features, ...added] }, twins };
}

export function cutScenes(
  document: SiteDocument,
  plants: readonly CutPlant[],
  options: SceneOptions,
  seasons: readonly number[],
): CutScene[] {
  const all = withTwins(document, plants);
  const speeds = new Map(options.speeds);
  for (const [id, [plant]] of all.twins) {
    const own = options.speeds?.get(plants[plant].id);
    if (own) speeds.set(id, own);
  }
  return seasons.map((year) => {
    const { scene, things } = lightScene(all.document, { ...options, speeds, year });
    const whose = things.map(({ id }) => all.twins.get(id) ?? ([-1, -1] as const));
    return {
      year,
      scene,
      plantOf: Int16Array.from(whose, ([plant]) => plant),
      optionOf: Int16Array.from(whose, ([, option]) => option),
    };
  });
}

/** The scene with one state of each plant. @param chosen option by plant, -1: uncut */
export function sceneOfChoice({ scene, plantOf, optionOf }: CutScene, chosen: Int16Array): LightScene {
  const stands = (thing: number) => plantOf[thing] < 0 || chosen[plantOf[thing]] === optionOf[thing];
  return { ...scene, crowns: someCrowns(scene.crowns, stands), prisms: somePrisms(scene.prisms, stands) };
}

const indicesWhere = (count: number, of: Uint16Array, stands: (thing: number) => boolean): number[] =>
  Array.from({ length: count }, (_, i) => i).filter((i) => stands(of[i]));

function someCrowns(crowns: CrownSet, stands: (thing: number) => boolean): CrownSet {
  const kept = indicesWhere(crowns.count, crowns.thing, stands);
  const values = new Float64Array(kept.length * CROWN_STRIDE);
  kept.forEach((from, to) => {
    values.set(crowns.values.subarray(from * CROWN_STRIDE, (from + 1) * CROWN_STRIDE), to * CROWN_STRIDE);
  });
  return {
    count: kept.length,
    values,
    form: Uint8Array.from(kept, (i) => crowns.form[i]),
    leafClass: Uint8Array.from(kept, (i) => crowns.leafClass[i]),
    thing: Uint16Array.from(kept, (i) => crowns.thing[i]),
  };
}

function somePrisms(prisms: PrismSet, stands: (thing: number) => boolean): PrismSet {
  const kept = indicesWhere(prisms.count, prisms.thing, stands);
  const values = new Float64Array(kept.length * PRISM_STRIDE);
  const ringStart = new Uint32Array(kept.length + 1);
  const ringXY: number[] = [];
  kept.forEach((from, to) => {
    values.set(prisms.values.subarray(from * PRISM_STRIDE, (from + 1) * PRISM_STRIDE), to * PRISM_STRIDE);
    ringXY.push(...prisms.ringXY.subarray(2 * prisms.ringStart[from], 2 * prisms.ringStart[from + 1]));
    ringStart[to + 1] = ringXY.length / 2;
  });
  return {
    count: kept.length,
    ringStart,
    ringXY: Float64Array.from(ringXY),
    values,
    solid: Uint8Array.from(kept, (i) => prisms.solid[i]),
    leafClass: Uint8Array.from(kept, (i) => prisms.leafClass[i]),
    thing: Uint16Array.from(kept, (i) => prisms.thing[i]),
  };
}
