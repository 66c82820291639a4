import { readFileSync, statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import type { SiteDocument } from '../site/document.ts';
import { parseSite } from '../site/parse-site.ts';
import { BadInputError } from '../units/bad-input.ts';

const REASONS: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder, a file is expected',
  EACCES: 'it may not be read',
};

/** A file's bytes in a buffer of their own. */
export function readBytes(path: string, named: string): Uint8Array<ArrayBuffer> {
  try {
    if (statSync(path).isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR' });
    // Small files are read into a shared pool: a copy has a buffer that can be handed to a worker.
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    throw new BadInputError(`${named}: ${REASONS[code] ?? 'it cannot be read'} (${path}).`);
  }
}

export interface SiteOnDisk {
  readonly document: SiteDocument;
  readonly fileName: string;
  /** What was done to the file on the way in. */
  readonly notes: readonly string[];
  /** Path of a file that the site names. */
  readonly pathOf: (file: string) => string;
}

/** Reads a site file; what it refers to lies beside it. */
export function readSite(path: string): SiteOnDisk {
  const fileName = basename(path);
  const bytes = readBytes(path, fileName);
  const { document, notes } = parseSite(new TextDecoder().decode(bytes), fileName);
  return { document, fileName, notes, pathOf: (file) => resolve(dirname(path), file) };
}
