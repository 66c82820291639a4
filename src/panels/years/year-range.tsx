import { LAST_SHOWN_YEAR, togglePlay } from '../../state/play-years.ts';
import { appStore, useApp } from '../../state/store.ts';

/** The year rule's handle: moved by pointer and arrow keys; the space bar plays and pauses. */
export function YearRange() {
  const year = useApp((app) => app.year);
  const baseYear = useApp((app) => app.document.site.baseYear);
  const show = useApp((app) => app.show);
  return (
    <input
      type="range"
      min={0}
      max={LAST_SHOWN_YEAR}
      step={1}
      value={year}
      aria-label="Years after planting"
      aria-valuetext={`year ${year}, ${baseYear + year}`}
      onChange={(event) => show({ year: Number(event.target.value), playing: false })}
      onKeyDown={(event) => {
        if (event.key !== ' ') return;
        event.preventDefault();
        togglePlay(appStore.getState());
      }}
    />
  );
}
