import { type ReactNode, useState } from 'react';
import type { PageModel } from '../../sheets/page-model.ts';
import type { App, AppState } from '../../state/model.ts';
import { Dialog } from '../parts/dialog.tsx';
import { OnPaper } from './on-paper.tsx';
import { savePdf } from './save-pdf.ts';
import './print.css';

/** Pages as they will be: shown first, then printed by the browser or saved as PDF. */
export function PagesDialog(props: {
  title: string;
  /** The app as it was when the pages were asked for. */
  app: App;
  pages: readonly PageModel[];
  /** Why there are no pages. */
  wrong?: string | null;
  /** The pages for who cannot see them. */
  words: string;
  /** How the PDF's name ends. */
  file: string;
  /** The dialog that is open once this one is closed. */
  backTo?: AppState['dialog'];
  /** Fields that choose what the pages are like. */
  choices: ReactNode;
}) {
  const { app, pages, backTo = null } = props;
  const [saving, setSaving] = useState(false);
  const save = async () => {
    setSaving(true);
    try {
      await savePdf(pages, app.document.site.name, props.file);
    } catch {
      app.say({ tone: 'warning', text: 'The PDF could not be made; print with the browser instead.' });
    } finally {
      setSaving(false);
    }
  };
  return (
    <Dialog
      title={props.title}
      broad
      onClose={() => app.show({ dialog: backTo })}
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
      <div className="print-choices">{props.choices}</div>
      {props.wrong ? <p className="field-wrong">{props.wrong}</p> : null}
      <OnPaper pages={pages} words={props.words} />
    </Dialog>
  );
}
