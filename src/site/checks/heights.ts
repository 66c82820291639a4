import { featuresOfKind } from '../chosen-features.ts';
import { behindReadings } from '../height-readings.ts';
import { isWoody } from '../woody.ts';
import { featureWords, type SiteCheck, type SiteProblem } from './problem.ts';

/** Heights read outside that say nothing, or that the model does not start from. */
export const checkHeights: SiteCheck = (document) => {
  const problems: SiteProblem[] = [];
  const things = new Map(document.features.map((feature) => [String(feature.id), feature]));
  for (const reading of featuresOfKind(document.features, 'measure')) {
    const { quantity, of, value, date, measuredYear } = reading.properties;
    if (quantity !== 'height' || of === undefined) continue;
    const say = (sentence: string) =>
      problems.push({
        level: 'note',
        featureId: reading.id,
        sentence: `${featureWords(reading)}: ${sentence}`,
      });
    const thing = things.get(String(of));
    if (!thing)
      say(`of is ${JSON.stringify(of)}, which is not in the site; expected the id of what was measured.`);
    else if (isWoody(thing) && (value === undefined || !(date ?? measuredYear)))
      say('a height and its day are expected; without both it says nothing of how its plant grows.');
  }
  for (const { plant, newest } of behindReadings(document, null))
    problems.push({
      level: 'note',
      featureId: plant.id,
      sentence: `${featureWords(plant)}: it was read as ${newest.heightM} m ${
        newest.date ? `on ${newest.date}` : `in ${newest.year}`
      }, but the model starts from ${
        plant.properties.heightM === undefined ? 'no height' : `${plant.properties.heightM} m`
      }; set heightM and measuredYear, or press “Start from the newest” under Tall trees.`,
    });
  return problems;
};
