import { useMemo, useState } from 'react';
import type { PageModel } from '../../sheets/page-model.ts';
import { PAPER_SIZES, type PaperSize } from '../../sheets/paper.ts';
import type { AppState } from '../../state/model.ts';
import { appStore } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { OnPaper } from './on-paper.tsx';
import { savePdf } from './save-pdf.ts';

/** Pages to take outside with a tape: shown first, then printed by the browser or saved as PDF. */
export function OutdoorDialog(props: {
  title: string;
  /** What is on the pages: "shadow stakes". */
  shows: string;
  /** How the PDF's name ends. */
  file: string;
  pagesOf: (state: AppState, paper: PaperSize, today: Date) => readonly PageModel[];
}) {
  const { title, shows, file, pagesOf } = props;
  // The page is what the screen showed when it was asked for.
  const [app] = useState(appStore.getState);
  const [paper, setPaper] = useState<PaperSize>('A4');
  const [saving, setSaving] = useState(false);
  const pages = useMemo(() => pagesOf(app, paper, new Date()), [app, paper, pagesOf]);
  const save = async () => {
    setSaving(true);
    try {
      await savePdf(pages, app.document.site.name, file);
    } catch {
      app.say({ tone: 'warning', text: 'The PDF could not be made; print with the browser instead.' });
    } finally {
      setSaving(false);
    }
  };
  return (
    <Dialog
      title={title}
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
      <OnPaper
        pages={pages}
        words={`The page of ${shows}, ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}`}
      />
    </Dialog>
  );
}
