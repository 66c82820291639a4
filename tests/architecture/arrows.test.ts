import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { beforeAll, describe, expect, it } from 'vitest';
import { ARROWS, OPEN_TO_ALL } from './arrows.ts';

const isCode = (path: string) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts');
const isOurs = (path: string) => path.startsWith('src/') || path.startsWith('workers/');

function codeFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .filter(isCode);
}

/** The row of the table that a file belongs to. */
function folderOf(path: string): string {
  const [top, second, ...deeper] = path.split('/');
  if (top === 'workers') return 'workers';
  return deeper.length > 0 ? second : '(entry)';
}

describe('the arrows between the folders', () => {
  const files = [...codeFiles('src'), ...codeFiles('workers')].sort();
  let result: ICruiseResult;

  beforeAll(async () => {
    const { output } = await cruise(
      ['src', 'workers'],
      {
        tsPreCompilationDeps: true,
        doNotFollow: { path: 'node_modules' },
        validate: true,
        ruleSet: {
          forbidden: [{ name: 'no-cycle', severity: 'error', from: {}, to: { circular: true } }],
        },
      },
      { extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'] },
    );
    result = output as ICruiseResult;
  }, 120_000);

  const ours = () => result.modules.filter((module) => isOurs(module.source) && isCode(module.source));

  it('are read from every file there is', () => {
    expect(
      ours()
        .map((module) => module.source)
        .sort(),
    ).toEqual(files);
    expect(ours().reduce((sum, module) => sum + module.dependencies.length, 0)).toBeGreaterThan(files.length);
  });

  it('resolve to a file', () => {
    const lost = ours().flatMap((module) =>
      module.dependencies
        .filter((dependency) => dependency.couldNotResolve && dependency.module.startsWith('.'))
        // What Vite resolves by a query (?url, ?raw) is no module of ours.
        .filter((dependency) => !dependency.module.includes('?'))
        .map((dependency) => `${module.source} -> ${dependency.module}`),
    );
    expect(lost).toEqual([]);
  });

  it('are all in the table', () => {
    const forbidden = new Set<string>();
    for (const module of ours()) {
      const from = folderOf(module.source);
      const arrows = ARROWS[from];
      if (!arrows) {
        forbidden.add(`${module.source}: the folder ${from} has no row`);
        continue;
      }
      for (const dependency of module.dependencies) {
        if (!isOurs(dependency.resolved) || !isCode(dependency.resolved)) continue;
        const to = folderOf(dependency.resolved);
        if (to === from || OPEN_TO_ALL.includes(to) || arrows.code.includes(to)) continue;
        if (arrows.files?.includes(dependency.resolved)) continue;
        if (dependency.dependencyTypes.includes('type-only') && arrows.types?.includes(to)) continue;
        const what = arrows.types?.includes(to) ? 'code, where only types may be taken' : to;
        forbidden.add(`${module.source} -> ${dependency.resolved} (${from} -> ${what})`);
      }
    }
    expect([...forbidden].sort()).toEqual([]);
  });

  it('make no cycle, types included', () => {
    const cycles = result.summary.violations
      .filter((violation) => violation.rule.name === 'no-cycle')
      .map((violation) =>
        [violation.from, ...(violation.cycle ?? []).map((step) => step.name ?? step)].join(' -> '),
      );
    expect(cycles).toEqual([]);
  });

  it('end at the file that is meant, never at a barrel', () => {
    const barrels = files.filter(
      (path) => /^index\.tsx?$/.test(basename(path)) || /^\s*export\s+\*/m.test(readFileSync(path, 'utf8')),
    );
    expect(barrels).toEqual([]);
  });

  it('keep React, the DOM and the map library to the screen', () => {
    const screen = ['state', 'map', 'panels', '(entry)'];
    const leaks = ours()
      .filter((module) => !screen.includes(folderOf(module.source)))
      .flatMap((module) =>
        module.dependencies
          .filter((dependency) =>
            /^(react|react-dom|maplibre-gl|terra-draw|zustand)(\/|$|-)/.test(dependency.module),
          )
          .map((dependency) => `${module.source} -> ${dependency.module}`),
      );
    expect(leaks).toEqual([]);
  });

  it('reach a worker only from jobs', () => {
    const starters = files.filter(
      (path) => folderOf(path) !== 'jobs' && /new\s+(Shared)?Worker\s*\(/.test(readFileSync(path, 'utf8')),
    );
    expect(starters).toEqual([]);
  });
});
