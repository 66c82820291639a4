import { useApp } from '../../state/store.ts';

/** The one line in which the app says something; it stays until it is put away or replaced. */
export function Said() {
  const message = useApp((app) => app.message);
  const say = useApp((app) => app.say);
  return (
    <div aria-live="polite">
      {message ? (
        <div className={message.tone === 'warning' ? 'said warning' : 'said'}>
          <p>{message.text}</p>
          <button type="button" className="bare" onClick={() => say(null)}>
            Put away
          </button>
        </div>
      ) : null}
    </div>
  );
}
