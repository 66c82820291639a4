// npm test: every check and test there is, one after the other, and one line of totals at the end.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { findOrGetBrowser } from './browser.mjs';
import { installIfMissing, root } from './install.mjs';

installIfMissing();
process.chdir(root);
const reports = '.cache/test-reports';
mkdirSync(reports, { recursive: true });

const total = { passed: 0, failed: 0, skipped: 0 };
const failedSteps = [];

/** Runs one program of node_modules with node, so that no shell stands between and signals reach it. */
function step(name, script, args, env = {}) {
  console.log(`\n== ${name}`);
  const started = Date.now();
  const { status } = spawnSync(process.execPath, [script, ...args], {
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  console.log(
    `-- ${name}: ${status === 0 ? 'passed' : 'FAILED'} in ${Math.round((Date.now() - started) / 1000)} s`,
  );
  if (status !== 0) failedSteps.push(name);
  return status === 0;
}

/** A step that is one test: it passes or it fails. */
function checkStep(name, script, args) {
  if (step(name, script, args)) total.passed++;
  else total.failed++;
}

/** Adds a runner's own counts; a run that failed without counting a failure (or wrote nothing) is one failure. */
function addCounts(passed, file, counts) {
  if (!existsSync(file)) {
    total.failed++;
    return;
  }
  const found = counts(JSON.parse(readFileSync(file, 'utf8')));
  total.passed += found.passed;
  total.failed += found.failed === 0 && !passed ? 1 : found.failed;
  total.skipped += found.skipped;
}

// The parts of `npm run check`, each on its own so that one failure does not hide the next; its architecture test is
// among the tests below.
checkStep('check: types', 'node_modules/typescript/bin/tsc', ['--noEmit']);
checkStep('check: style', 'node_modules/@biomejs/biome/bin/biome', ['check', '.']);
checkStep('check: unused code', 'node_modules/knip/bin/knip.js', []);

const vitestReport = `${reports}/vitest.json`;
rmSync(vitestReport, { force: true });
const vitestPassed = step('unit, truth and architecture tests', 'node_modules/vitest/vitest.mjs', [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${vitestReport}`,
]);
addCounts(vitestPassed, vitestReport, (report) => ({
  passed: report.numPassedTests,
  failed: report.numFailedTests,
  skipped: report.numPendingTests + report.numTodoTests,
}));

const built = step('build of the app', 'node_modules/vite/bin/vite.js', ['build', '--logLevel', 'warn']);
if (built) total.passed++;
else total.failed++;

const browser = built ? await findOrGetBrowser() : null;
if (browser) {
  const browserReport = `${reports}/browser.json`;
  rmSync(browserReport, { force: true });
  const passed = step(
    'browser tests',
    'node_modules/@playwright/test/cli.js',
    ['test', '--config', 'tests/e2e/playwright.config.ts', '--reporter', 'list,json'],
    { CHROME_PATH: browser, PLAYWRIGHT_JSON_OUTPUT_FILE: `${root}${browserReport}` },
  );
  addCounts(passed, browserReport, ({ stats }) => ({
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky,
    skipped: stats.skipped,
  }));
} else {
  failedSteps.push('browser tests');
  total.failed++;
  console.error(
    built ? 'The browser tests did not run: no browser.' : 'The browser tests did not run: no build.',
  );
}

if (failedSteps.length > 0) console.log(`\nFailed: ${failedSteps.join('; ')}`);
console.log(
  `${total.passed} passed, ${total.failed} failed${total.skipped > 0 ? `, ${total.skipped} skipped` : ''}`,
);
process.exitCode = total.failed > 0 || failedSteps.length > 0 ? 1 : 0;
