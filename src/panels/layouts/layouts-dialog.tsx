import { layoutNames } from '../../site/layout-names.ts';
import { useApp } from '../../state/store.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { LayoutList } from './layout-list.tsx';
import { NewLayout } from './new-layout.tsx';
import { StartLayouts } from './start-layouts.tsx';
import './layouts.css';

/** The alternative designs of the site: which one is on the map, and starting, naming, copying and deleting them. */
export function LayoutsDialog() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const show = useApp((app) => app.show);
  const count = layoutNames(document).length;
  return (
    <Dialog
      title="Layouts"
      onClose={() => show({ dialog: null })}
      footer={
        count > 0 ? (
          <button type="button" className="main" onClick={() => show({ dialog: 'two-layouts' })}>
            {count > 1 ? 'Two side by side' : 'Beside what is common'}
          </button>
        ) : null
      }
    >
      {count === 0 ? (
        <Answer figure="No layouts">
          Everything is common. A layout is one alternative design of the same site: start two, and change
          each as you like.
        </Answer>
      ) : (
        <Answer figure={`${count} ${count === 1 ? 'layout' : 'layouts'}`}>{shownWords(layout)}</Answer>
      )}
      {count === 0 ? <StartLayouts /> : <LayoutList />}
      <NewLayout />
    </Dialog>
  );
}

const shownWords = (layout: string | null): string =>
  layout === null
    ? 'On the map is what is common to all. What you plan now becomes part of every layout.'
    : `On the map is “${layout}”. What you plan now becomes part of it alone; what is common changes in all.`;
