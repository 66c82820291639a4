import { useMemo, useState } from 'react';
import { horizonPage } from '../../sheets/horizon-page.ts';
import { PAPER_SIZES, type PaperSize } from '../../sheets/paper.ts';
import { appStore } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { OnPaper } from '../print/on-paper.tsx';
import { savePdf } from '../print/save-pdf.ts';
import { horizonPageInput } from './horizon-input.ts';

/** The horizon to take outside: shown first, then printed by the browser or saved as PDF. */
export function PrintHorizonDialog() {
  // The page is what the screen showed when it was asked for.
  const [app] = useState(appStore.getState);
  const [paper, setPaper] = useState<PaperSize>('A4');
  const [saving, setSaving] = useState(false);
  const pages = useMemo(() => {
    const input = horizonPageInput(app, paper, new Date());
    return input ? [horizonPage(input)] : [];
  }, [app, paper]);
  const save = async () => {
    setSaving(true);
    try {
      await savePdf(pages, app.document.site.name, 'horizon');
    } catch {
      app.say({ tone: 'warning', text: 'The PDF could not be made; print with the browser instead.' });
    } finally {
      setSaving(false);
    }
  };
  return (
    <Dialog
      title="Horizon on paper"
      broad
      onClose={() => app.show({ dialog: 'horizon' })}
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
      <OnPaper pages={pages} words="The printed horizon" />
    </Dialog>
  );
}
