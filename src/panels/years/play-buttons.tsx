import { stepYears, togglePlay } from '../../state/play-years.ts';
import { appStore, useApp } from '../../state/store.ts';

const KEYS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };

/** A year back, play or pause, a year on. Arrow keys step while one of them has the focus. */
export function PlayButtons() {
  const playing = useApp((app) => app.playing);
  const step = (by: number) => stepYears(appStore.getState(), by);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is filled in
    <div
      className="play"
      role="group"
      aria-label="Go through the years"
      onKeyDown={(event) => {
        const by = KEYS[event.key];
        if (by === undefined) return;
        event.preventDefault();
        step(by);
      }}
    >
      <button type="button" aria-label="Back a year" onClick={() => step(-1)}>
        ‹
      </button>
      <button type="button" className="play-word" onClick={() => togglePlay(appStore.getState())}>
        {playing ? 'Pause' : 'Play'}
      </button>
      <button type="button" aria-label="On a year" onClick={() => step(1)}>
        ›
      </button>
    </div>
  );
}
