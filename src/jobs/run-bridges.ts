import { ALONE_OPTIONS, aloneScene } from '../belts/belt-alone.ts';
import type { BeltLike } from '../belts/belt-shape.ts';
import { pointsOnField } from '../belts/belt-side.ts';
import { type BridgeGain, type BridgeOffer, bridges, takenDownAfter, withBridge } from '../belts/bridge.ts';
import { fieldCut, fieldGrid } from '../belts/field-cut.ts';
import { type BeltWhen, CUT_SHARE } from '../belts/years-to-protect.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runFieldCut, type WindReading } from './run-field-cut.ts';

const CELLS_ACROSS = 30;

/** Less of the field, or of the mean cut, is not worth a bridge. Common practice, no source. */
const LEAST_GAIN = 0.01;

const gainsAnything = ({
  protectedWith,
  protectedWithout,
  meanCutWith,
  meanCutWithout,
}: BridgeGain): boolean =>
  protectedWith - protectedWithout >= LEAST_GAIN || meanCutWith - meanCutWithout >= LEAST_GAIN;

/** What would bridge a planned belt's first years and gains anything, with its gain in each of them. */
export async function runBridges(
  runner: JobRunner,
  request: { readonly document: SiteDocument; readonly options: SceneOptions; readonly field: FieldFeature },
  belt: BeltLike,
  when: BeltWhen,
  reading: WindReading,
  run: RunOptions = {},
): Promise<BridgeOffer[]> {
  const { document, options, field } = request;
  const offers = bridges(document, belt, when, options, pointsOnField(field, options.frame));
  const { grid, mask } = fieldGrid(field, options.frame, CELLS_ACROSS);
  const found: BridgeOffer[] = [];
  let done = 0;
  for (const offer of offers) {
    const bridged = withBridge(document, offer);
    const gains: BridgeGain[] = [];
    for (let year = offer.fromYear; year <= offer.toYear; year++) {
      const moment = { ...options, year, felled: null };
      const alone = async (site: SiteDocument, ids: readonly FeatureId[]) => {
        const scene = aloneScene(site, moment, ids, when.fromDeg);
        if (!scene) return 0;
        const result = await runner.run(
          'shelter',
          { ...reading, scene, grid, options: ALONE_OPTIONS },
          { signal: run.signal },
        );
        return fieldCut(result, mask, CUT_SHARE).protectedShare;
      };
      const [protectedWithout, protectedWith, without, withIt] = await Promise.all([
        alone(document, [belt.id]),
        alone(bridged.document, [belt.id, bridged.id]),
        runFieldCut(runner, document, moment, field, reading, run),
        runFieldCut(runner, bridged.document, moment, field, reading, run),
      ]);
      gains.push({
        year,
        protectedWithout,
        protectedWith,
        meanCutWithout: without.meanCut,
        meanCutWith: withIt.meanCut,
      });
      done++;
      run.onProgress?.(done / (offers.length * (offer.toYear - offer.fromYear + 1)));
    }
    const last = gains.findLast(gainsAnything);
    // A bridge is taken down when the belt does as much without it.
    if (last) found.push({ ...takenDownAfter(offer, last.year, document.site.baseYear), gains });
  }
  return found;
}
