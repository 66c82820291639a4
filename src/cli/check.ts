import { existsSync } from 'node:fs';
import type { Command } from 'commander';
import { createLocalRunner } from '../jobs/local-runner.ts';
import { findSpecies, suggestSpeciesName } from '../plants/find-species.ts';
import { siteFrame, siteGround } from '../scene/site-ground.ts';
import { checkSite } from '../site/check-site.ts';
import { filesOf } from '../site/checks/site-record.ts';
import { readingNotes } from '../stakes/reading-notes.ts';
import { spotNotes } from '../windspots/spot-notes.ts';
import { pathFromCaller } from './caller-path.ts';
import { ProblemsListed } from './exit.ts';
import { readGroundOf, readWeatherOf } from './prepare.ts';
import { readSite } from './read-files.ts';
import { readSurfaceOf } from './read-surface.ts';

interface CheckOptions {
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade check`: reads the site file and everything it refers to, and lists what is wrong with it. */
export function addCheckCommand(program: Command): void {
  program
    .command('check')
    .description(
      'read the file and everything it refers to; list problems, and how far readings of shadows and wind missed',
    )
    .argument('<site file>', 'site file (.site.geojson)')
    .option('--json', 'print the list as JSON')
    .option('--quiet', 'problems only, no notes')
    .action(check);
}

async function check(path: string, options: CheckOptions): Promise<void> {
  const site = readSite(pathFromCaller(path));
  const { document, fileName, pathOf } = site;
  const filesAtHand = filesOf(document)
    .map(({ file }) => file)
    .filter((file) => existsSync(pathOf(file)));
  const found = checkSite(document, {
    filesAtHand,
    knowsSpecies: (name) => {
      const species = findSpecies(name, document.site.species);
      return {
        known: species !== null,
        suggestion: species ? null : suggestSpeciesName(name, document.site.species),
        matureHeightM: species?.curve.maxHeightM ?? null,
        shootsAgain: species?.shootsAgain,
      };
    },
  });
  // What is at hand must also be readable: its own sentence ends the command.
  const { terrainFile, surfaceFile, weatherFile } = document.site;
  const frame = siteFrame(document);
  const { ground } =
    terrainFile && filesAtHand.includes(terrainFile)
      ? await readGroundOf(site, frame, createLocalRunner())
      : siteGround(document, frame, null);
  if (weatherFile && filesAtHand.includes(weatherFile)) readWeatherOf(site);
  const hasBoth = [surfaceFile, terrainFile].every((file) => file && filesAtHand.includes(file));
  const surface = hasBoth ? await readSurfaceOf(site, frame, ground, createLocalRunner()) : null;
  if (surface?.problem) found.push({ level: 'problem', sentence: surface.problem });

  found.push(...readingNotes({ document, frame, ground }), ...spotNotes({ document, frame, ground }));
  const listed = options.quiet ? found.filter((problem) => problem.level === 'problem') : found;
  if (options.json) process.stdout.write(`${JSON.stringify({ problems: listed }, null, 2)}\n`);
  else for (const { level, sentence } of listed) process.stdout.write(`${fileName}: ${level}: ${sentence}\n`);
  if (found.some((problem) => problem.level === 'problem')) throw new ProblemsListed();
}
