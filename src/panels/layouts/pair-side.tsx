import type { LinkedView } from '../../map/linked-view.ts';
import { SmallPlan } from '../../map/small-plan.tsx';
import { layoutNames } from '../../site/layout-names.ts';
import { pairField, pairOf, pairPlans, pairRaster } from '../../state/pair-shown.ts';
import { useApp } from '../../state/store.ts';
import { SelectField } from '../parts/select-field.tsx';

const COMMON = '';
const NAMES = ['Left layout', 'Right layout'] as const;

/** One of the two: which layout it is, and its plan. */
export function PairSide(props: { side: 0 | 1; view: LinkedView; hatched: boolean }) {
  const { side, view, hatched } = props;
  const document = useApp((app) => app.document);
  const comparing = useApp((app) => app.comparing);
  const pair = useApp(pairOf);
  const plans = useApp(pairPlans);
  const raster = useApp((app) => pairRaster(app, side));
  const field = useApp(pairField);
  const show = useApp((app) => app.show);
  if (!pair || !plans) return null;
  const layout = pair[side];
  const choose = (next: string | null) =>
    show({ comparing: { ...comparing, layouts: side === 0 ? [next, pair[1]] : [pair[0], next] } });
  return (
    <div className="pair-side">
      <SelectField
        label={NAMES[side]}
        value={layout ?? COMMON}
        options={[
          ...layoutNames(document).map((name) => ({ value: name, label: name })),
          { value: COMMON, label: 'what is common to all' },
        ]}
        onChange={(name) => choose(name === COMMON ? null : name)}
      />
      <SmallPlan
        label={`Plan of ${layout ?? 'what is common to all'}`}
        testId={`plan-${side}`}
        layout={layout}
        grown={plans[side]}
        raster={raster}
        field={field}
        view={view}
        hatched={hatched}
      />
    </div>
  );
}
