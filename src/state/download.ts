/** Hands a file to the person through the browser's own saving. */
export function downloadBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser takes the address over in its own time; a minute is plenty.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

export const downloadText = (name: string, text: string, type: string): void =>
  downloadBlob(name, new Blob([text], { type }));
