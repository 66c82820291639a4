import { writeFileSync } from 'node:fs';
import { shelterCurvePicture } from './shelter-curve-picture.ts';

/** Draws the README's figure of the barrier function beside what was measured; a test holds the two together. */
writeFileSync(new URL('../.pictures/shelter-curve.svg', import.meta.url), shelterCurvePicture());
