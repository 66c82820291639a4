import { spawnSync } from 'node:child_process';

/** GDAL's programs are not part of the project: tests that use them are skipped, and say so, where they are absent. */
export const gdalIsHere = spawnSync('gdalinfo', ['--version']).status === 0;
if (!gdalIsHere)
  console.warn('gdalinfo is not installed: the tests that read our files with GDAL are skipped.');
