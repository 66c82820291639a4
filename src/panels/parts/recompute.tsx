import { useApp } from '../../state/store.ts';

type Restartable =
  | 'light'
  | 'shelter'
  | 'outlook'
  | 'costs'
  | 'beltYears'
  | 'bridges'
  | 'insurance'
  | 'edgeProfile'
  | 'coldAir'
  | 'fieldsCompared'
  | 'horizon'
  | 'windHere'
  | 'spotPlan'
  | 'spotScore'
  | 'yearsLook'
  | 'stepped';

/** After a stop or a failure: a way to start again. */
export function Recompute(props: { of: Restartable }) {
  const status = useApp((app) => app[props.of].status);
  const again = useApp((app) => app.computeAgain);
  if (status !== 'cancelled' && status !== 'failed') return null;
  return (
    <div className="buttons">
      <button type="button" onClick={again}>
        Work it out again
      </button>
    </div>
  );
}
