import { Command } from 'commander';
import { addCheckCommand } from './check.ts';
import { exitOf } from './exit.ts';
import { addLightCommand } from './light.ts';
import { addShelterCommand } from './shelter.ts';

/** The command line: one command a question, the same engines as the screen. */
function leeglade(): Command {
  const program = new Command('leeglade')
    .description('light, shelter and growth of a garden of many layers, from a site file')
    .exitOverride()
    .showSuggestionAfterError(false)
    .configureOutput({ outputError: (text, write) => write(`${text.trim().replace(/\s*\n\s*/g, ' ')}\n`) });
  addCheckCommand(program);
  addLightCommand(program);
  addShelterCommand(program);
  for (const command of program.commands) command.copyInheritedSettings(program);
  return program;
}

try {
  const program = leeglade();
  if (process.argv.length <= 2) {
    process.stderr.write('error: no command given; expected check, light or shelter (--help tells more)\n');
    process.exitCode = 2;
  } else await program.parseAsync();
} catch (error) {
  const { status, line } = exitOf(error);
  if (line) process.stderr.write(`${line}\n`);
  process.exitCode = status;
}
