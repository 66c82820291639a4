import { patchDefaults } from '../site/records/patch.ts';

/** Heights above ground at which light and wind are read, m. */
export const READING_HEIGHT_M = patchDefaults.readingHeightMByLayer;
export const WIND_READING_HEIGHT_M = 1.5;
