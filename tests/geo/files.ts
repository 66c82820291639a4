import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The bytes of a fixture, in a buffer of their own (Node shares one buffer among small files). */
export function fixtureBytes(name: string): ArrayBuffer {
  const file = readFileSync(join(import.meta.dirname, 'fixtures', name));
  return file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength) as ArrayBuffer;
}

export const textBytes = (text: string): ArrayBuffer => new TextEncoder().encode(text).buffer as ArrayBuffer;
