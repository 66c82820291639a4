import regularUrl from '@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf?url';
import boldUrl from '@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf?url';
import type { PageModel } from '../../sheets/page-model.ts';
import { downloadBlob } from '../../state/download.ts';
import { fileNameOf } from '../../state/files-slice.ts';

const bytesAt = async (url: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(url)).arrayBuffer());

/** Makes the PDF and hands it to the person, named by the site and what it shows. The writer and its fonts are loaded only now: few visits need them. */
export async function savePdf(pages: readonly PageModel[], siteName: string, shows: string): Promise<void> {
  const [{ pagesToPdf }, regular, bold] = await Promise.all([
    import('../../sheets/page-to-pdf.ts'),
    bytesAt(regularUrl),
    bytesAt(boldUrl),
  ]);
  const pdf = pagesToPdf(pages, { regular, bold });
  downloadBlob(`${fileNameOf(siteName)}-${shows}.pdf`, new Blob([pdf], { type: 'application/pdf' }));
}
