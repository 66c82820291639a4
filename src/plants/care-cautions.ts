import type { CareKind } from '../growth/care.ts';
import type { Species } from './species.ts';

/** All of these are common practice, no source. First for every piece of work with a saw, then for single ones. */
const TRAINED = 'Felling, climbing and chainsaws are for trained people, never alone.';
const NESTS = 'Birds nest from early spring: work in winter, and look for nests and bats first.';
const ORDERS =
  'A preservation order, a felling licence or the lease may stand against it: ask before you cut.';
const DEAD = 'A dead tree turns brittle: keep people from under it and have it seen by a trained person.';
const GRAFTED = 'Grafted plants shoot again from their rootstock, which is another kind.';
const OLD_STUMPS = 'Old stumps may fail to shoot; fence young shoots from stock and deer.';
/** A crown is raised to no more than this share of the height, and no more than this share of the leaves is thinned. */
const MOST_AT_ONCE = 1 / 3;

/** What a caution depends on. */
export interface CautionedWork {
  readonly what: CareKind;
  readonly heightM?: number;
  readonly share?: number;
  /** The species that stands there before the work; null: not known. */
  readonly species: Species | null;
  /** Its height before the work, m; null: not known. */
  readonly heightBeforeM: number | null;
  readonly isGrafted: boolean;
}

/** What is to be minded whatever is cut. */
export const CARE_CAUTIONS: readonly string[] = [TRAINED, NESTS, ORDERS];

/** What is to be minded of one piece of work on one plant, the gravest first. */
export function careCautions(work: CautionedWork): string[] {
  const { what, species, heightBeforeM, isGrafted } = work;
  const found: string[] = [];
  const takesAll = what === 'coppice' || what === 'pollard';
  if (takesAll && species?.shootsAgain === false)
    found.push(
      `${capital(species.commonName)}, like most conifers, does not shoot again when its whole crown is taken: it counts as its end.`,
    );
  else if (takesAll && isGrafted) found.push(GRAFTED);
  else if (what === 'coppice') found.push(OLD_STUMPS);
  if (what === 'cutTo' && species?.shootsAgain === false)
    found.push(
      `${capital(species.commonName)} does not shoot from old wood: cut no farther back than green shoots.`,
    );
  if (
    what === 'raiseCrown' &&
    heightBeforeM !== null &&
    (work.heightM ?? 0) > MOST_AT_ONCE * heightBeforeM + ROUNDING_M
  )
    found.push(
      'That clears more than a third of its height, beyond usual practice: raise it in steps, some years apart.',
    );
  if (what === 'thin' && (work.share ?? 0) > MOST_AT_ONCE)
    found.push('More than a third of the leaves at once is beyond usual practice: thin it in steps.');
  if (what === 'die') found.push(DEAD);
  return found;
}

/** Heights are typed to a tenth of a metre. */
const ROUNDING_M = 0.05;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
