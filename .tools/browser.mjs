// Finds a Chromium for the browser tests, or gets one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { root } from './install.mjs';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of a browser that is here, or null. */
async function browserHere() {
  for (const name of ['CHROME_PATH', 'CHROME']) {
    const path = process.env[name];
    if (!path) continue;
    if (existsSync(path)) return path;
    console.error(`${name} is ${path}, which is not there; looking elsewhere.`);
  }
  const usual = USUAL_PLACES.find((path) => existsSync(path));
  if (usual) return usual;
  const { chromium } = await import('@playwright/test');
  return existsSync(chromium.executablePath()) ? chromium.executablePath() : null;
}

const runs = (command, args) => {
  console.log(`$ ${command} ${args.join(' ')}`);
  return (
    spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' }).status ===
    0
  );
};

/**
 * Path of a Chromium. Where none is here: Debian's own through apt when this is root on such a machine, otherwise
 * Playwright's download. Null when neither can be had; that has then been said.
 */
export async function findOrGetBrowser() {
  const here = await browserHere();
  if (here) return here;
  console.log('No browser found for the browser tests: getting one.');
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    process.env.DEBIAN_FRONTEND = 'noninteractive';
    if (
      runs('apt-get', ['update', '-q']) &&
      runs('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'])
    ) {
      const installed = await browserHere();
      if (installed) return installed;
    }
  }
  if (runs('npx', ['playwright', 'install', 'chromium'])) {
    const downloaded = await browserHere();
    if (downloaded) return downloaded;
  }
  console.error(
    'No browser can be had here: neither apt-get nor the Playwright download gave one. ' +
      'Install Chromium or Chrome and set CHROME_PATH to its program; the browser tests cannot run without it.',
  );
  return null;
}
