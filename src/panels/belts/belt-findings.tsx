import { inOneLine } from '../../belts/belt-words.ts';
import { FINDING_NAMES } from '../../belts/finding-types.ts';
import type { SiteFeature } from '../../site/document.ts';
import { beltsFound } from '../../state/belts-found.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import './belts.css';

/** What is wrong with the chosen belt or block in one line; each with its numbers and its cure behind it. */
export function BeltFindings(props: { readonly feature: SiteFeature }) {
  const found = useApp((app) => beltsFound(app).find(({ facts }) => facts.id === props.feature.id) ?? null);
  const sun = useApp((app) => app.beltSun);
  if (!found) return null;
  const { findings } = found;
  return (
    <section className="section" aria-label="What is wrong with it">
      <h2>What is wrong with it</h2>
      <p>{findings.length === 0 ? 'Nothing that is known of.' : `${inOneLine(findings)}.`}</p>
      {sun.status === 'computing' ? (
        <p className="small soft">What sun it takes from the patches is being worked out.</p>
      ) : null}
      {findings.length > 0 ? (
        <Details title="In numbers, and what would cure it">
          <dl className="belt-findings">
            {findings.map(({ kind, says, cure, source }) => (
              <div key={says}>
                <dt>{FINDING_NAMES[kind]}</dt>
                <dd>
                  {says} <i>{cure}</i>
                  <small className="soft">{source}</small>
                </dd>
              </div>
            ))}
          </dl>
        </Details>
      ) : null}
    </section>
  );
}
