/**
 * Who may import whom, by top folder of src (and `workers`). A change here is a decision: it comes with a reason.
 * `units` and `numeric` are open to all; libraries are free except where the last test says so.
 */
interface Arrows {
  /** Folders whose code may be imported. */
  readonly code: readonly string[];
  /** Folders of which only types may be imported. */
  readonly types?: readonly string[];
  /** Single files of those folders that may be imported as code all the same. */
  readonly files?: readonly string[];
  readonly reason?: string;
}

export const OPEN_TO_ALL = ['units', 'numeric'];

const BELOW_THE_ENGINES = ['geo', 'sun', 'growth', 'plants', 'crowns'];
const ENGINES = ['light', 'wind'];
const QUESTIONS = [
  'choose',
  'belts',
  'place',
  'spots',
  'fertility',
  'work',
  'stakes',
  'windspots',
  'layouts',
  'cuts',
];
const question: Arrows = { code: ['years', 'scene', ...ENGINES, 'site', ...BELOW_THE_ENGINES] };
/** Questions that are answered by going out with tapes. */
const outdoors: Arrows['code'] = [...question.code, 'outside'];

export const ARROWS: Readonly<Record<string, Arrows>> = {
  units: { code: [] },
  numeric: { code: [] },
  geo: { code: [] },
  sun: { code: [] },
  growth: { code: [] },
  plants: {
    code: ['growth', 'crowns'],
    reason: 'crowns: leaf-area densities are solved so that a mature crown lets through the published share',
  },
  site: { code: ['geo'] },
  crowns: { code: ['geo', 'growth'] },
  scene: {
    code: ['site', 'plants', 'crowns', 'growth', 'geo', 'sun', 'wind'],
    types: ENGINES,
    reason:
      'it fills the plain arrays that the engines take, whose types the engines own; wind: the site’s record or weather file becomes a wind climate there; it never runs an engine',
  },
  light: { code: ['geo', 'sun', 'crowns'] },
  wind: { code: ['geo', 'sun', 'crowns'] },
  years: {
    code: ['scene', 'growth', 'site', 'plants', 'geo', ...ENGINES],
    reason:
      'site, plants and geo: it asks the document for one year after another, where its plants stand, and when they bear',
  },
  choose: question,
  belts: question,
  place: question,
  spots: question,
  fertility: question,
  work: question,
  cuts: {
    code: question.code,
    reason:
      'a question of its own, which few cuts of a winter bring the light back; it has a quick model for the search and asks the light engine about what was chosen',
  },
  layouts: {
    code: question.code,
    reason:
      'a question of its own, what differs between two designs of one site and which comes first; it counts, prices and says, and what asks the engines is a job',
  },
  outside: {
    code: ['scene', 'site', 'geo'],
    reason:
      'how a place is found outside with tapes, and what stands around it on a day; below the questions that need it, which never import each other',
  },
  stakes: {
    code: outdoors,
    reason:
      'a question of its own, where the tips of shadows fall and what readings of them say; it asks the sun and light/shadow-tip.ts, and never runs the year',
  },
  windspots: {
    code: outdoors,
    reason:
      'a question of its own, what two hand meters will show behind a belt and what readings say; it asks the shelter engine for single cells in one wind, and never runs the year',
  },
  sheets: { code: [...QUESTIONS, 'outside', 'site', 'geo'] },
  jobs: {
    code: [...ENGINES, 'years', ...QUESTIONS, 'scene', 'geo'],
    types: ['site', 'growth'],
    files: ['src/growth/pace-band.ts'],
    reason:
      'geo: reading a raster of elevations is a job, and no engine; types of the site and of paces: a question that runs an engine many times over years and designs is a job, which hands the document on to its question’s folder; pace-band: slow, usual and fast side by side',
  },
  workers: { code: ['jobs'] },
  batch: {
    code: ['jobs', 'scene', 'site', 'geo'],
    types: ENGINES,
    reason: 'it sums up what the engines answered, by the types of their answers',
  },
  cli: {
    code: [
      'batch',
      'sheets',
      'jobs',
      'scene',
      'site',
      'years',
      'outside',
      ...QUESTIONS,
      ...ENGINES,
      ...BELOW_THE_ENGINES,
    ],
  },
  state: {
    code: [
      'site',
      'scene',
      'outside',
      'stakes',
      'choose',
      'belts',
      'layouts',
      'years',
      'jobs',
      'plants',
      'geo',
      'sun',
      'growth',
    ],
    types: [...ENGINES, 'windspots', 'cuts'],
    files: [
      'src/wind/shelter-guesses.ts',
      'src/windspots/kept-spots.ts',
      'src/windspots/score-words.ts',
      'src/windspots/scored-readings.ts',
      'src/windspots/sheltering-feature.ts',
      'src/windspots/spot-plan.ts',
      'src/windspots/usual-wind.ts',
      'src/windspots/write-down.ts',
    ],
    reason:
      'it keeps the frame, the ground and the answers of the engines, by their types; it never calls one; stakes: a few rays, done in milliseconds, are asked for where they are shown; windspots: what is kept in the document, and words; what asks the engine is a job; shelter-guesses: which guesses there are, in words, and which are usually on; belts: what is wrong with them is said of the document without an engine, the rest are jobs; layouts: what differs is counted in the document, and said of what jobs answered; years: figures of what jobs answered, and when trees bear',
  },
  map: { code: ['state', 'site', 'geo', 'plants', 'sheets'] },
  panels: {
    code: ['state', 'site', 'geo', 'plants', 'sheets', 'map'],
    types: ['stakes', 'windspots', 'outside', 'choose', 'belts', 'years', 'layouts', 'cuts'],
    files: [
      'src/choose/choice.ts',
      'src/choose/cell-pictures.ts',
      'src/choose/choice-words.ts',
      'src/choose/choose-types.ts',
      'src/choose/knock-out-words.ts',
      'src/choose/knock-outs.ts',
      'src/choose/measure-words.ts',
      'src/choose/measures.ts',
      'src/choose/cold-words.ts',
      'src/choose/edge-words.ts',
      'src/cuts/cut-words.ts',
      'src/belts/belt-words.ts',
      'src/belts/finding-types.ts',
      'src/belts/propose-words.ts',
      'src/layouts/comparison.ts',
      'src/layouts/layout-words.ts',
      'src/layouts/measure-words.ts',
      'src/layouts/measures.ts',
      'src/outside/tape-words.ts',
      'src/windspots/readable-winds.ts',
      'src/windspots/spot-plan.ts',
      'src/windspots/spot-words.ts',
      'src/windspots/score-words.ts',
      'src/stakes/stake-words.ts',
      'src/stakes/score-words.ts',
      'src/outside/surroundings.ts',
      'src/sun/day-words.ts',
      'src/wind/shelter-guesses.ts',
      'src/years/share-at.ts',
      'src/years/shelter-effect.ts',
      'src/years/years-words.ts',
    ],
    reason:
      'map: the window that holds the panels also holds the map; stakes, wind spots and days are said in the same words on the screen, on paper and on the command line',
  },
  /** The files that lie in src itself: the page and what starts it. */
  '(entry)': { code: ['panels', 'map', 'state'] },
};
