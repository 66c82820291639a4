import { Command } from 'commander';
import { addBeltsCommand } from './belts.ts';
import { addCareCommand } from './care.ts';
import { addCheckCommand } from './check.ts';
import { addChooseCommand } from './choose.ts';
import { addColdCommand } from './cold.ts';
import { addCutsCommand } from './cuts.ts';
import { addEdgeCommand } from './edge.ts';
import { type ExitStatus, exitOf } from './exit.ts';
import { addGrowthCommand } from './growth.ts';
import { addHorizonCommand } from './horizon.ts';
import { addLayoutsCommand } from './layouts.ts';
import { addLightCommand } from './light.ts';
import { addProposeBeltsCommand } from './propose-belts.ts';
import { addShelterCommand } from './shelter.ts';
import { addStakesCommand } from './stakes.ts';
import { addWindCommand } from './wind.ts';
import { addWindAtCommand } from './wind-at.ts';
import { addWindSpotsCommand } from './wind-spots.ts';
import { addYearsCommand } from './years.ts';

function commands(): Command {
  const program = new Command('leeglade')
    .description('light, shelter and growth of a garden of many layers, from a site file')
    .exitOverride()
    .showSuggestionAfterError(false)
    .configureOutput({ outputError: (text, write) => write(`${text.trim().replace(/\s*\n\s*/g, ' ')}\n`) });
  addCheckCommand(program);
  addChooseCommand(program);
  addColdCommand(program);
  addCutsCommand(program);
  addLightCommand(program);
  addHorizonCommand(program);
  addShelterCommand(program);
  addStakesCommand(program);
  addWindCommand(program);
  addWindAtCommand(program);
  addWindSpotsCommand(program);
  addBeltsCommand(program);
  addCareCommand(program);
  addEdgeCommand(program);
  addGrowthCommand(program);
  addProposeBeltsCommand(program);
  addLayoutsCommand(program);
  addYearsCommand(program);
  for (const command of program.commands) command.copyInheritedSettings(program);
  return program;
}

/**
 * The command line: one command a question, the same engines as the screen. Results go to standard output, progress
 * and what is wrong to standard error.
 * @param args what stands behind `leeglade`.
 */
export async function leeglade(args: readonly string[]): Promise<ExitStatus> {
  const program = commands();
  if (args.length === 0) {
    const names = program.commands.map((command) => command.name()).sort();
    process.stderr.write(
      `error: no command given; expected ${names.slice(0, -1).join(', ')} or ${names.at(-1)} (--help tells more)\n`,
    );
    return 2;
  }
  try {
    await program.parseAsync(args, { from: 'user' });
    return 0;
  } catch (error) {
    const { status, line } = exitOf(error);
    if (line) process.stderr.write(`${line}\n`);
    return status;
  }
}
