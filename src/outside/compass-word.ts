const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** The nearest of the eight directions of an azimuth in degrees: "south-east". */
export const compassWord = (azimuthDeg: number): string =>
  COMPASS[Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8];
