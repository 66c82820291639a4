import { useMemo, useState } from 'react';
import { MAP_SCALES } from '../../sheets/map-scale.ts';
import { PAPER_SIZES, type PaperSize } from '../../sheets/paper.ts';
import { planPages } from '../../sheets/plan-page.ts';
import { appStore } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { OnPaper } from './on-paper.tsx';
import { type PageChoices, planInput } from './plan-input.ts';
import { savePdf } from './save-pdf.ts';
import './print.css';

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
  const [saving, setSaving] = useState(false);
  const { document } = app;
  const { pages, wrong } = useMemo(() => {
    try {
      return { pages: planPages(planInput(app, choices, new Date())), wrong: null };
    } catch (reason) {
      return { pages: [], wrong: (reason as Error).message };
    }
  }, [app, choices]);
  const change = (part: Partial<PageChoices>) => setChoices({ ...choices, ...part });
  const save = async () => {
    setSaving(true);
    try {
      await savePdf(pages, document.site.name, 'plan');
    } catch {
      app.say({ tone: 'warning', text: 'The PDF could not be made; print with the browser instead.' });
    } finally {
      setSaving(false);
    }
  };
  return (
    <Dialog
      title="Print this page"
      broad
      onClose={() => app.show({ dialog: null })}
      footer={
        <>
          <button type="button" disabled={pages.length === 0 || saving} onClick={() => void save()}>
            {saving ? 'Making the PDF' : 'Save PDF'}
          </button>
          <button type="button" className="main" disabled={pages.length === 0} onClick={() => window.print()}>
            Print
          </button>
        </>
      }
    >
      <div className="print-choices">
        <SelectField
          label="Scale"
          value={String(choices.scale)}
          options={[
            { value: 'fit', label: 'as large as it fits' },
            ...MAP_SCALES.map((scale) => ({ value: String(scale), label: `1 : ${scale}` })),
          ]}
          onChange={(value) => change({ scale: value === 'fit' ? 'fit' : Number(value) })}
        />
        <SelectField
          label="Paper"
          value={choices.paper}
          options={(Object.keys(PAPER_SIZES) as PaperSize[]).map((paper) => ({ value: paper, label: paper }))}
          onChange={(paper) => change({ paper })}
        />
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
      </div>
      {wrong ? <p className="field-wrong">{wrong}</p> : null}
      <OnPaper pages={pages} words={`The printed plan, ${pages.length} pages`} />
    </Dialog>
  );
}
