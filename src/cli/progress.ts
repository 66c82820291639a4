/** Shows how far a command is, on standard error: one line that is rewritten on a terminal, a few lines elsewhere. */
export function progressLine(what: string, quiet: boolean): (done: number) => void {
  if (quiet) return () => {};
  let shown = -1;
  const terminal = process.stderr.isTTY;
  return (done) => {
    const percent = Math.min(100, Math.floor(done * 100));
    const step = terminal ? 1 : 20;
    if (percent < 100 ? percent < shown + step : shown === 100) return;
    shown = percent < 100 ? percent - (percent % step) : 100;
    const text = `${what} ${shown} %`;
    process.stderr.write(terminal ? `\r${text}${shown === 100 ? '\n' : ''}` : `${text}\n`);
  };
}
