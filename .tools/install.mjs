// Installs the packages of package-lock.json when they are missing or older than it.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** The packages of a lockfile that every machine needs: path -> version. */
function wantedVersions(lockfile) {
  const { packages } = JSON.parse(readFileSync(lockfile, 'utf8'));
  return Object.entries(packages).filter(([path, entry]) => path !== '' && !entry.optional && !entry.link);
}

/** Whether node_modules holds what package-lock.json asks for, by version and not by date: a clone sets its own dates. */
function installed() {
  const held = `${root}node_modules/.package-lock.json`;
  if (!existsSync(held)) return false;
  const versions = new Map(
    Object.entries(JSON.parse(readFileSync(held, 'utf8')).packages).map(([path, entry]) => [
      path,
      entry.version,
    ]),
  );
  return wantedVersions(`${root}package-lock.json`).every(
    ([path, entry]) => versions.get(path) === entry.version || entry.peer === true,
  );
}

/** Brings node_modules up to the lockfile; ends the process with a plain sentence when that cannot be done. */
export function installIfMissing() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Leeglade needs Node 20.19 or newer; this is Node ${process.versions.node}.`);
    process.exit(1);
  }
  if (installed()) return;
  // Not on standard output, which may be a command's answer.
  console.error('Installing the packages of package-lock.json (npm ci) ...');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const { status } = spawnSync(npm, ['ci'], {
    cwd: root,
    stdio: ['inherit', process.stderr, 'inherit'],
    shell: process.platform === 'win32',
  });
  if (status !== 0) {
    console.error('The packages could not be installed: npm ci failed. Is the network there?');
    process.exit(1);
  }
}
