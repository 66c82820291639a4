import { useMemo } from 'react';
import { sizesNow } from '../../state/sizes-now.ts';
import { useApp } from '../../state/store.ts';
import { windSpotsOf } from '../../state/wind-spots.ts';
import { METER_HEIGHT_M } from '../../windspots/spot-plan.ts';
import { Details } from '../parts/panel-head.tsx';
import { OpenWindSpots } from './open-wind-spots.tsx';
import './wind-spots.css';

/** Belts and walls that stand today, tall enough that two hand meters show what they do. */
export function MeasurableBelts() {
  const document = useApp((app) => app.document);
  const frame = useApp((app) => app.frame);
  const layout = useApp((app) => app.layout);
  const today = useMemo(() => sizesNow({ document, frame, layout }), [document, frame, layout]);
  const belts = document.features.flatMap((feature) => {
    const spots = windSpotsOf(document, feature);
    const size = today.get(feature.id);
    const stands = size !== undefined && size.heightM >= 2 * METER_HEIGHT_M;
    return spots && spots.of === feature.id && stands
      ? [{ ...spots, name: feature.properties.name ?? 'A belt' }]
      : [];
  });
  if (belts.length === 0) return null;
  return (
    <Details title="Is it true? Check it with two wind meters">
      <p className="soft">
        The tool says in writing what one meter in the open and one behind a belt will show; then you go and
        see.
      </p>
      <ul className="belts-to-measure">
        {belts.map((belt) => (
          <li key={belt.of}>
            <OpenWindSpots of={belt.of} readings={belt.readings} waiting={belt.waiting} behind={belt.name} />
          </li>
        ))}
      </ul>
    </Details>
  );
}
