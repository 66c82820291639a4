import { type Document as PlainDocument, DOMParser as PlainParser } from '@xmldom/xmldom';
import { BadInputError } from '../../units/bad-input.ts';

/**
 * An XML document, by the browser's own parser where there is one.
 * @throws BadInputError when the text is not XML, or its outermost element is another one than expected.
 */
export function parseXml(fileName: string, text: string, root: string): Document | PlainDocument {
  const expected = `${fileName}: this is not a ${root.toUpperCase()} file; expected XML that starts with <${root}>.`;
  const document = typeof DOMParser === 'undefined' ? plainDocument(text) : browserDocument(text);
  if (!document) throw new BadInputError(expected);
  const name = document.documentElement?.nodeName.replace(/^.*:/, '').toLowerCase();
  if (name !== root) throw new BadInputError(expected);
  return document;
}

function browserDocument(text: string): Document | null {
  const document = new DOMParser().parseFromString(text, 'text/xml');
  return document.getElementsByTagName('parsererror').length > 0 ? null : document;
}

function plainDocument(text: string): PlainDocument | null {
  try {
    return new PlainParser({ onError: stopAtErrors }).parseFromString(text, 'text/xml');
  } catch {
    return null; // the parser's own words are about markup; the caller says what was expected
  }
}

function stopAtErrors(level: 'warning' | 'error' | 'fatalError', message: string): void {
  if (level !== 'warning') throw new Error(message);
}
