export { directionWord as compassWord } from '../units/compass.ts';
