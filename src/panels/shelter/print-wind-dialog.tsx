import { useMemo, useState } from 'react';
import { PAPER_SIZES, type PaperSize } from '../../sheets/paper.ts';
import { windPages } from '../../sheets/wind-page.ts';
import { appStore } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { OnPaper } from '../print/on-paper.tsx';
import { savePdf } from '../print/save-pdf.ts';
import { windPageInput } from './wind-page-input.ts';

/** The page of the wind: shown first, then printed by the browser or saved as PDF. */
export function PrintWindDialog() {
  // The page is what the screen showed when it was asked for.
  const [app] = useState(appStore.getState);
  const [paper, setPaper] = useState<PaperSize>('A4');
  const [saving, setSaving] = useState(false);
  const pages = useMemo(() => {
    const input = windPageInput(app, paper, new Date());
    return input ? windPages(input) : [];
  }, [app, paper]);
  const save = async () => {
    setSaving(true);
    try {
      await savePdf(pages, app.document.site.name, 'wind');
    } catch {
      app.say({ tone: 'warning', text: 'The PDF could not be made; print with the browser instead.' });
    } finally {
      setSaving(false);
    }
  };
  return (
    <Dialog
      title="The wind on paper"
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
          label="Paper"
          value={paper}
          options={(Object.keys(PAPER_SIZES) as PaperSize[]).map((size) => ({ value: size, label: size }))}
          onChange={setPaper}
        />
      </div>
      <OnPaper pages={pages} words="The page of the wind" />
    </Dialog>
  );
}
