import { z } from 'zod';
import { CROWN_FORMS } from '../crowns/crown-set.ts';
import { LEAF_CLASSES } from '../growth/leaf-calendar.ts';
import { GROWTH_RATES, type GrowthRate } from './growth-rates.ts';
import { LIGHT_NEEDS, ROLES, type RoleLetter } from './species.ts';

const share = z.number().min(0).max(1);
const crownShare = z.number().gt(0).max(1);

/**
 * One entry of `site.species`: a correction to a species of the catalogue of the same `name`, or a new species that
 * starts as a copy of `like`. Only what differs is given. Lengths in metres, rates per year, shares 0 to 1.
 */
export const siteSpeciesRecord = z.looseObject({
  name: z.string().trim().min(1),
  /** Botanical name of the catalogue's species that a new one takes everything else from. */
  like: z.string().optional(),
  commonName: z.string().optional(),
  role: z.enum(Object.keys(ROLES) as [RoleLetter, ...RoleLetter[]]).optional(),
  crownForm: z.enum(CROWN_FORMS).optional(),
  matureHeightM: z.number().positive().max(120).optional(),
  growthRate: z.enum(GROWTH_RATES as [GrowthRate, ...GrowthRate[]]).optional(),
  /** k and p of the height curve; they win over `growthRate`. */
  ratePerYear: z.number().positive().max(2).optional(),
  shape: z.number().min(0.5).max(10).optional(),
  matureSpreadM: z.number().positive().max(60).optional(),
  /** How well it does here against other species; times `site.vigour`; scales heights and spreads at every age. */
  vigour: z.number().min(0.3).max(2).optional(),
  clearStemShare: z.number().min(0).max(0.9).optional(),
  leafClass: z.enum(LEAF_CLASSES).optional(),
  transmittanceLeafOn: crownShare.optional(),
  transmittanceLeafOff: crownShare.optional(),
  opticalPorosityLeafOn: share.optional(),
  opticalPorosityLeafOff: share.optional(),
  beltWidthM: z.number().positive().optional(),
  rootstocks: z
    .array(z.looseObject({ name: z.string(), sizeFactor: z.number().positive().max(2) }))
    .optional(),
  yearsToBear: z.number().min(0).nullish(),
  lightNeed: z.enum(LIGHT_NEEDS).optional(),
  fixesNitrogen: z.boolean().optional(),
  shootsAgain: z.boolean().optional(),
  cautions: z.array(z.string()).optional(),
  source: z.string().optional(),
});
export type SiteSpeciesRecord = z.infer<typeof siteSpeciesRecord>;
