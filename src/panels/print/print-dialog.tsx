import { useMemo, useState } from 'react';
import { MAP_SCALES } from '../../sheets/map-scale.ts';
import { planPages } from '../../sheets/plan-page.ts';
import { appStore } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { PagesDialog } from './pages-dialog.tsx';
import { PaperField } from './paper-field.tsx';
import { type PageChoices, planInput } from './plan-input.ts';

/** The plan on paper, to a true scale: shown first, then printed by the browser or saved as PDF. */
export function PrintDialog() {
  // The page is what the screen showed when it was asked for: a pointer that moves must not draw it again.
  const [app] = useState(appStore.getState);
  const [choices, setChoices] = useState<PageChoices>({
    paper: 'A4',
    orientation: 'landscape',
    scale: 'fit',
    inking: 'tints',
  });
  const { pages, wrong } = useMemo(() => {
    try {
      return { pages: planPages(planInput(app, choices, new Date())), wrong: null };
    } catch (reason) {
      return { pages: [], wrong: (reason as Error).message };
    }
  }, [app, choices]);
  const change = (part: Partial<PageChoices>) => setChoices({ ...choices, ...part });
  return (
    <PagesDialog
      title="Print this page"
      app={app}
      pages={pages}
      wrong={wrong}
      words={`The printed plan, ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}`}
      file="plan"
      choices={
        <>
          <SelectField
            label="Scale"
            value={String(choices.scale)}
            options={[
              { value: 'fit', label: 'as large as it fits' },
              ...MAP_SCALES.map((scale) => ({ value: String(scale), label: `1 : ${scale}` })),
            ]}
            onChange={(value) => change({ scale: value === 'fit' ? 'fit' : Number(value) })}
          />
          <PaperField paper={choices.paper} onChange={(paper) => change({ paper })} />
          <Choice
            label="It lies"
            value={choices.orientation}
            options={[
              { value: 'landscape', label: 'across' },
              { value: 'portrait', label: 'upright' },
            ]}
            onChange={(orientation) => change({ orientation })}
          />
          <Choice
            label="Ink"
            value={choices.inking}
            options={[
              { value: 'tints', label: 'tints' },
              { value: 'ink', label: 'lines and hatching' },
            ]}
            onChange={(inking) => change({ inking })}
          />
        </>
      }
    />
  );
}
