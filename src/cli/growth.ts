import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { findRootstock, findSpecies, suggestSpeciesName } from '../plants/find-species.ts';
import type { Species } from '../plants/species.ts';
import { siteVigour } from '../scene/site-vigour.ts';
import { speciesGrowth, speciesOnSite } from '../scene/species-growth.ts';
import type { SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import { layoutOption } from './common-options.ts';
import { type GrowthPage, growthCsv, growthJson, growthText } from './growth-text.ts';
import { layoutOf } from './prepare.ts';
import { readSite } from './read-files.ts';

interface GrowthOptions {
  readonly species?: string;
  readonly rootstock?: string;
  readonly layout?: string;
  readonly json?: boolean;
  readonly csv?: string;
}

/** `leeglade growth`: how fast each species grows here, from where each figure is, and what measured heights say. */
export function addGrowthCommand(program: Command): void {
  program
    .command('growth')
    .description('how tall and wide each species gets here by when, and what measured heights say of that')
    .argument('<site file>', 'site file (.site.geojson)')
    .option('--species <NAME>', 'one species, by its botanical or common name; those of the site otherwise')
    .option('--rootstock <NAME>', 'the rootstock that it stands on')
    .addOption(layoutOption())
    .option('--json', 'print the answer as JSON')
    .option('--csv <FILE>', 'also write the sizes as a table', pathFromCaller)
    .action(growth);
}

/** @throws BadInputError when the catalogue and the site know no such species. */
function speciesNamed({ site }: SiteDocument, name: string): Species {
  const meant = suggestSpeciesName(name, site.species);
  const byCommonName = findSpecies(meant, site.species);
  const isCommonName = byCommonName?.commonName.toLowerCase() === name.trim().toLowerCase();
  const found = findSpecies(name, site.species) ?? (isCommonName ? byCommonName : null);
  if (found) return found;
  const hint = meant ? `did you mean ${JSON.stringify(meant)}?` : 'expected one of the catalogue.';
  throw new BadInputError(`--species: ${JSON.stringify(name)} is not known; ${hint}`);
}

function growth(path: string, options: GrowthOptions): void {
  const { document } = readSite(pathFromCaller(path));
  const layout = layoutOf(document, options.layout);
  if (options.rootstock !== undefined && options.species === undefined)
    throw new BadInputError('--rootstock is given without --species; expected the species that it carries.');
  const shown =
    options.species === undefined
      ? speciesOnSite(document, layout)
      : [speciesNamed(document, options.species)];
  const rootstock = options.rootstock === undefined ? null : rootstockNamed(shown[0], options.rootstock);
  const page: GrowthPage = {
    siteName: document.site.name,
    layout,
    vigour: siteVigour(document, layout),
    species: shown.map((species) => speciesGrowth(document, species, rootstock)),
  };
  if (options.csv !== undefined) writeFileSync(options.csv, growthCsv(page));
  process.stdout.write(options.json ? growthJson(page) : growthText(page, options.csv ?? null));
}

function rootstockNamed(species: Species, name: string) {
  const found = findRootstock(species, name);
  if (found) return found;
  const known = species.rootstocks.map((stock) => stock.name);
  throw new BadInputError(
    `--rootstock: ${JSON.stringify(name)} is not known for ${species.botanicalName}; expected ${
      known.length > 0 ? `one of ${known.join(', ')}` : 'none, as it has none'
    }.`,
  );
}
