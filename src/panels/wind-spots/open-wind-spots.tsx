import type { FeatureId } from '../../site/document.ts';
import { appStore } from '../../state/store.ts';
import { openWindSpots } from '../../state/wind-spots.ts';

/** Leads to the wind spots of a belt, and says what is kept of them. */
export function OpenWindSpots(props: {
  of: FeatureId;
  readings: number;
  waiting: number;
  /** What it is called, where that is not plain from where the button stands. */
  behind?: string;
}) {
  const { of, readings, waiting, behind } = props;
  const kept = [
    ...(readings > 0 ? [`${readings} ${readings === 1 ? 'reading' : 'readings'}`] : []),
    ...(waiting > 0 ? [`${waiting} to be read`] : []),
  ];
  return (
    <button type="button" onClick={() => openWindSpots(appStore.getState(), of)}>
      {[behind ?? 'Wind spots', ...kept].join(', ')}
    </button>
  );
}
