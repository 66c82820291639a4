import { offsetWords, twoTapesWords } from '../../outside/tape-words.ts';
import type { SpotPlan, WindSpot } from '../../windspots/spot-plan.ts';
import { distanceWords, partsWords, percent, rangeText, speedsWords } from '../../windspots/spot-words.ts';
import { Details } from '../parts/panel-head.tsx';
import { useTapeUnit } from '../stakes/use-tape-unit.ts';

/** The spots from the belt outwards, each with what is expected and its offsets. */
export const SpotList = ({ plan }: { plan: SpotPlan }) => (
  <ol className="stake-list">
    {plan.spots.map((spot) => (
      <li key={spot.number}>
        <Spot plan={plan} spot={spot} />
      </li>
    ))}
  </ol>
);

function Spot({ plan, spot }: { plan: SpotPlan; spot: WindSpot }) {
  const unit = useTapeUnit();
  const { expected } = spot;
  const { share, byFunction, measured } = expected;
  return (
    <>
      <h3>
        <span className="stake-number">{spot.number}</span> {rangeText(expected)}
      </h3>
      <p>
        {capital(spot.words)}: by the function {percent(share)}, {rangeText(byFunction)} with what is not
        known here;{' '}
        {measured ? `behind belts that were measured ${rangeText(measured)}` : 'nobody measured there'}.{' '}
        {capital(speedsWords(expected, plan.openMps, unit))}.
      </p>
      <p>{offsetWords(spot, plan.line, unit)}</p>
      <p className="small soft">
        Check: {twoTapesWords(spot, plan.line, unit)}. {capital(distanceWords(spot, unit))}.
      </p>
      {spot.cautions.map((caution) => (
        <p key={caution} className="caution">
          {capital(caution)}.
        </p>
      ))}
      <Details title="What makes the range">
        {partsWords(expected).map((part) => (
          <p key={part} className="small">
            {capital(part)}.
          </p>
        ))}
      </Details>
    </>
  );
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
