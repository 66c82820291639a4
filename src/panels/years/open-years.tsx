import { useApp } from '../../state/store.ts';
import { uncoverMap } from '../parts/uncover-map.ts';
import { YEARS_LOOK_ID } from './years-look-id.ts';

/** Opens the years in one look from a panel. */
export function OpenYears() {
  const show = useApp((app) => app.show);
  return (
    <button
      type="button"
      onClick={() => {
        show({ yearsOpen: true });
        uncoverMap();
        requestAnimationFrame(() => document.getElementById(YEARS_LOOK_ID)?.focus());
      }}
    >
      The years in one look
    </button>
  );
}
