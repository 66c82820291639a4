import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** This file is read again by every worker process: the port is found once and handed on in the environment. */
const FREE_PORT = `const server = require('node:net').createServer().listen(0, '127.0.0.1', () => {
  console.log(server.address().port);
  server.close();
})`;
process.env.LEEGLADE_E2E_PORT ??= execFileSync(process.execPath, ['-e', FREE_PORT], {
  encoding: 'utf8',
}).trim();
const port = process.env.LEEGLADE_E2E_PORT;

const executablePath = [process.env.CHROME_PATH, '/usr/bin/chromium'].find(
  (path) => path !== undefined && existsSync(path),
);

/** Tests of the built app in a real browser: `vite build` comes first. */
export default defineConfig({
  testDir: '.',
  outputDir: `${root}test-results`,
  fullyParallel: false,
  workers: 1,
  retries: 0,
  timeout: 420_000,
  expect: { timeout: 120_000 },
  forbidOnly: process.env.CI === 'true',
  use: {
    actionTimeout: 90_000,
    baseURL: `http://127.0.0.1:${port}/`,
    viewport: { width: 1120, height: 640 },
    contextOptions: { reducedMotion: 'reduce' },
    serviceWorkers: 'block',
    launchOptions: {
      executablePath,
      args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
    },
  },
  webServer: {
    // Vite's own file: through npx the server would outlive the tests.
    command: `node node_modules/vite/bin/vite.js preview --port ${port} --strictPort --host 127.0.0.1`,
    cwd: root,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
});
