import { resolve } from 'node:path';

/**
 * A path as the caller means it. `npm run` starts a script in the package's own folder and says in INIT_CWD where the
 * person stood.
 */
export function pathFromCaller(path: string): string {
  const { INIT_CWD, npm_lifecycle_event } = process.env;
  return resolve(npm_lifecycle_event === 'leeglade' && INIT_CWD ? INIT_CWD : '.', path);
}
