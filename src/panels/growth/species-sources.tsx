import { COMMON_PRACTICE, SPREAD_SOURCE } from '../../plants/sources.ts';
import { formatShare } from '../../state/format-measure.ts';
import type { SpeciesGrowth } from '../../state/growth-here.ts';
import { Details } from '../parts/panel-head.tsx';

const FORMS = { ellipsoid: 'egg', dome: 'dome', cone: 'cone', cylinder: 'column' } as const;

/** What is reckoned with for a species, each figure with where it is from. */
export function SpeciesSources(props: {
  readonly growth: SpeciesGrowth;
  readonly lengthOf: (lengthM: number) => string;
}) {
  const { growth, lengthOf } = props;
  const { species, rootstock, belt } = growth;
  const { curve, spread, transmittance } = species;
  const bears = species.yearsToBear;
  const rows: readonly (readonly [string, string, string])[] = [
    ['Full-grown height', lengthOf(curve.maxHeightM), species.heightSource],
    ['Pace of the curve', `half of it ${halfGrownYears(curve)} years from seed`, species.curveSource],
    ['Full-grown spread', lengthOf(spread.matureSpreadM), SPREAD_SOURCE],
    ...(rootstock
      ? [[`On ${rootstock.name}`, `${formatShare(rootstock.sizeFactor)} of both`, rootstock.source] as const]
      : []),
    ['Form of the crown', FORMS[species.crownForm], COMMON_PRACTICE],
    ['Clear stem', `${formatShare(species.clearStemShare)} of the height`, COMMON_PRACTICE],
    ['Leaves', species.leafClass, COMMON_PRACTICE],
    [
      'Daylight through its crown',
      `${formatShare(transmittance.leafOn)} in leaf, ${formatShare(transmittance.leafOff)} bare`,
      transmittance.source,
    ],
    [
      'Daylight through a belt of it',
      `${formatShare(belt.opticalPorosityLeafOn)} in leaf, ${formatShare(belt.opticalPorosityLeafOff)} bare`,
      belt.source,
    ],
    ['First crop', bears === null ? 'none looked for' : `after ${bears} years`, COMMON_PRACTICE],
  ];
  return (
    <Details title="Where these figures come from">
      <dl className="sources">
        {rows.map(([what, figure, source]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>
              {figure}
              <small className="soft">{source}</small>
            </dd>
          </div>
        ))}
      </dl>
    </Details>
  );
}

const halfGrownYears = ({ ratePerYear, shape }: SpeciesGrowth['species']['curve']): number =>
  Math.round(-Math.log(1 - 0.5 ** (1 / shape)) / ratePerYear);
