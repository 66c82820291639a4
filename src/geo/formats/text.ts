/**
 * Text of a file, whatever its encoding: a byte-order mark or an XML declaration decides; otherwise UTF-8, and where
 * the bytes are not UTF-8, Windows Western (as older programs on that system write).
 */
export function decodeText(bytes: ArrayBuffer): string {
  const head = new Uint8Array(bytes, 0, Math.min(200, bytes.byteLength));
  const encoding = markedEncoding(head) ?? declaredEncoding(head);
  if (encoding) return new TextDecoder(encoding).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function markedEncoding(head: Uint8Array): string | null {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  return null;
}

function declaredEncoding(head: Uint8Array): string | null {
  const start = String.fromCharCode(...head);
  const declared = /^(?:\xef\xbb\xbf)?\s*<\?xml[^>]*encoding\s*=\s*["']([\w-]+)["']/i.exec(start)?.[1];
  // Bytes that could spell the declaration one by one are not UTF-16, whatever it says.
  if (!declared || /^utf-?(8|16)/i.test(declared)) return null;
  try {
    return new TextDecoder(declared).encoding;
  } catch {
    return null; // an encoding that does not exist: guess
  }
}
