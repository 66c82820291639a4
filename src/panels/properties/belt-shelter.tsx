import { useMemo } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import { drawShelterCurve } from '../../sheets/shelter-curve.ts';
import type { SiteFeature } from '../../site/document.ts';
import {
  type BeltCurve,
  beltCurveOf,
  curveSetting,
  MEASURED_BELTS,
  roughlyM,
} from '../../state/belt-curve.ts';
import { formatLength, formatShare, lengthIn, lengthUnit } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import { SvgPage } from '../print/svg-page.tsx';
import './belt-shelter.css';

const SIZES = { width: 290, height: 226, text: 13, pen: 0.7 };
/** The cut that is spoken of. */
const SPOKEN_CUT = 0.3;

/** How far a belt or wall shelters: the published function beside what was measured, and how far the two differ. */
export function BeltShelter(props: { readonly feature: SiteFeature }) {
  const { feature } = props;
  const units = useApp((app) => app.unitSystem);
  const setting = useApp(useShallow(curveSetting));
  const curve = useMemo(() => beltCurveOf(setting, feature), [setting, feature]);
  const svg = useMemo(() => (curve ? drawing(curve, units) : ''), [curve, units]);
  if (!curve) return null;
  return (
    <section className="section" aria-label="How far it shelters">
      <p>{sentence(curve, units)}</p>
      <Details title="How far it shelters, drawn">
        <figure className="belt-shelter">
          <div aria-hidden="true">
            <SvgPage svg={svg} />
          </div>
          <figcaption className="small soft">
            Wind along a line through the middle of a long belt of this height, square to the wind. The line
            is the published function the map is made with (WEPS)
            {curve.states.length > 1 ? ', dashed when bare' : ''}; the wash is everything between the weakest
            and the best that was measured: full dots one belt in Iowa, open dots four in Moravia, the dashed
            box the quietest place of each of nine in Ontario, the bar where “cut by 20 %” ends behind eleven
            in Victoria.
          </figcaption>
        </figure>
        <Reaches curve={curve} units={units} />
      </Details>
    </section>
  );
}

function drawing({ heightM, states }: BeltCurve, units: UnitSystem): string {
  const marks = drawShelterCurve(
    { curves: states.map((state) => state.curve), measured: MEASURED_BELTS },
    SIZES,
    (heights) => `${Math.round(lengthIn(heights * heightM, units))} ${lengthUnit(units)}`,
  );
  return pageToSvg({ title: 'How far it shelters', widthMm: SIZES.width, heightMm: SIZES.height, marks });
}

const rough = (lengthM: number, units: UnitSystem): string =>
  `${roughlyM(lengthIn(lengthM, units))} ${lengthUnit(units)}`;

function sentence({ heightM, footM, states, reaches }: BeltCurve, units: UnitSystem): string {
  const spoken = reaches.find(({ cut }) => cut === SPOKEN_CUT);
  const percent = formatShare(SPOKEN_CUT);
  const open = states.map(({ leaf, porosity }) => `${formatShare(porosity)} ${leaf}`).join(', ');
  const stands = `${formatLength(heightM, units)} tall, daylight through it ${open}${footM > 0 ? `, its open foot of ${formatLength(footM, units)} counted in` : ''}.`;
  const byFunction = spoken?.functionM[0];
  const says =
    byFunction === null || byFunction === undefined
      ? `By the function it never cuts the wind by ${percent}.`
      : `By the function the wind is cut by ${percent} to ${rough(byFunction, units)} behind it.`;
  const measured = spoken?.measured;
  const found = measured
    ? ` Behind measured belts that reached ${roughlyM(lengthIn(measured.nearestM, units))} to ${rough(measured.farthestM, units)}, counted in heights: they differ by ${rough(measured.farthestM - measured.nearestM, units)}, and the weakest of nine conifer belts never came to ${percent}.`
    : ' No belt as open as this is among those measured.';
  // A figure keeps its percent sign beside it.
  return `${stands} ${says}${found}`.replaceAll(' %', '\u00a0%');
}

function Reaches({ curve, units }: { readonly curve: BeltCurve; readonly units: UnitSystem }) {
  return (
    <table>
      <caption>How far behind it, by the function and as measured</caption>
      <thead>
        <tr>
          <th scope="col">cut by</th>
          {curve.states.map(({ leaf }) => (
            <th key={leaf} scope="col" className="number">
              {curve.states.length > 1 ? leaf : 'function'}
            </th>
          ))}
          <th scope="col" className="number">
            measured
          </th>
        </tr>
      </thead>
      <tbody>
        {curve.reaches.map(({ cut, functionM, measured }) => (
          <tr key={cut}>
            <th scope="row" className="share">
              {formatShare(cut)}
            </th>
            {functionM.map((lengthM, i) => (
              <td key={curve.states[i].leaf} className="number">
                {lengthM === null ? 'nowhere' : rough(lengthM, units)}
              </td>
            ))}
            <td className="number">
              {measured
                ? `${roughlyM(lengthIn(measured.nearestM, units))}–${rough(measured.farthestM, units)}`
                : 'not known'}
              {measured ? (
                <small className="soft">
                  {measured.nearest.place === measured.farthest.place
                    ? measured.nearest.place
                    : `${measured.nearest.place}, ${measured.farthest.place}`}
                </small>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
