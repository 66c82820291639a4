import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PageModel } from '../sheets/page-model.ts';
import { pagesToPdf } from '../sheets/page-to-pdf.ts';

const face = (file: string): Uint8Array =>
  new Uint8Array(
    readFileSync(fileURLToPath(import.meta.resolve(`@expo-google-fonts/atkinson-hyperlegible-next/${file}`))),
  );

/** Writes pages as one PDF with their typeface in it. */
export function writePdf(path: string, pages: readonly PageModel[]): void {
  const pdf = pagesToPdf(pages, {
    regular: face('400Regular/AtkinsonHyperlegibleNext_400Regular.ttf'),
    bold: face('700Bold/AtkinsonHyperlegibleNext_700Bold.ttf'),
  });
  writeFileSync(path, new Uint8Array(pdf));
}
