import { addLayout } from '../../site/actions/add-layout.ts';
import { freeLayoutName } from '../../state/layout-facts.ts';
import { useApp } from '../../state/store.ts';
import { Section } from '../parts/panel-head.tsx';

/** A layout with nothing of its own yet. */
export function NewLayout() {
  const document = useApp((app) => app.document);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  return (
    <Section title="Another one">
      <p className="soft">
        With nothing of its own yet: what you plan while it is on the map becomes part of it alone.
      </p>
      <div className="buttons">
        <button
          type="button"
          onClick={() => {
            const name = freeLayoutName(document, 'New layout');
            edit('Start an empty layout', (site) => addLayout(site, name));
            show({ layout: name });
          }}
        >
          Start an empty layout
        </button>
      </div>
    </Section>
  );
}
