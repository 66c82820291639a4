import { useMemo, useState } from 'react';
import type { PageModel } from '../../sheets/page-model.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import type { AppState } from '../../state/model.ts';
import { appStore } from '../../state/store.ts';
import { PagesDialog } from './pages-dialog.tsx';
import { PaperField } from './paper-field.tsx';

/** Pages of which only the paper is chosen. */
export function PaperDialog(props: {
  title: string;
  /** The pages for who cannot see them: "The page of the wind". */
  words: string;
  /** True where their number is told too. */
  counted?: boolean;
  file: string;
  backTo?: AppState['dialog'];
  pagesOf: (state: AppState, paper: PaperSize, today: Date) => readonly PageModel[];
}) {
  const { words, counted, pagesOf, ...rest } = props;
  // The page is what the screen showed when it was asked for.
  const [app] = useState(appStore.getState);
  const [paper, setPaper] = useState<PaperSize>('A4');
  const pages = useMemo(() => pagesOf(app, paper, new Date()), [app, paper, pagesOf]);
  const number = counted ? `, ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}` : '';
  return (
    <PagesDialog
      {...rest}
      app={app}
      pages={pages}
      words={`${words}${number}`}
      choices={<PaperField paper={paper} onChange={setPaper} />}
    />
  );
}
