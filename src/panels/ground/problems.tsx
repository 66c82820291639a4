import { plural } from '../../state/format-words.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';

/** What deserves a look, problems before notes. */
export function Problems() {
  const problems = useApp((app) => app.problems);
  const missing = useApp((app) => app.missingFiles);
  const select = useApp((app) => app.select);
  const count = problems.length + missing.length;
  if (count === 0) return null;
  const known = new Set(problems.map((problem) => problem.sentence));
  return (
    <Details title={`${plural(count, 'thing')} to look at`}>
      <ul className="problems">
        {missing
          .map((name) => `${name} is not on this device: open it, and it is used.`)
          .filter((sentence) => !known.has(sentence))
          .map((sentence) => (
            <li key={sentence} className="caution">
              {sentence}
            </li>
          ))}
        {problems.map((problem) => (
          <li key={problem.sentence} className={problem.level === 'problem' ? 'caution' : 'small'}>
            {problem.sentence}{' '}
            {problem.featureId === undefined ? null : (
              <button type="button" className="link" onClick={() => select(problem.featureId ?? null)}>
                Show it
              </button>
            )}
          </li>
        ))}
      </ul>
    </Details>
  );
}
