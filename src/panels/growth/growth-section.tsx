import { vigourHere, vigourSentences, vigourWords } from '../../state/growth-here.ts';
import { useApp } from '../../state/store.ts';
import { Section } from '../parts/panel-head.tsx';

/** In a few words how fast things grow here, and the way to more. */
export function GrowthSection() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const show = useApp((app) => app.show);
  const vigour = vigourHere({ document, layout });
  const [sentence] = vigourSentences(vigour);
  return (
    <Section title="How fast do things grow here?">
      <p>
        {vigour.before ? `Things are reckoned to grow ${vigourWords(vigour.now).toLowerCase()}. ` : ''}
        {sentence}
      </p>
      <div className="buttons">
        <button type="button" onClick={() => show({ dialog: 'growth' })}>
          Growth curves and measured heights
        </button>
      </div>
    </Section>
  );
}
