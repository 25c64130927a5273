import { type Command, Option } from 'commander';
import { FINDING_IDS } from '../model/forecast-types.js';
import { PLANNERS } from '../settings.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { numberOf, numberOrOff } from './option-values.js';
import type { Run } from './run.js';

/** `furrow accept <file>`: writes down that the house knows a finding and cuts all the same. */
export function addAccept(program: Command, run: Run): void {
  program
    .command('accept')
    .description('accept a finding of a file, in furrow.accepted.json beside it')
    .argument('<file>', 'the file, as it is forecast')
    .addOption(new Option('--id <id>', 'which finding').choices(FINDING_IDS).makeOptionMandatory())
    .option('--at <mm:ss.s>', 'a time within it, where there is more than one')
    .requiredOption('--reason <text>', 'why it is cut all the same')
    .option('--profile <file>', 'the profile of the lathe and the house')
    .option('--no-discovery', 'look for no furrow.profile.json in the folders above')
    .option('--disc <inches>', 'size of the disc: 12, 10 or 7', numberOf)
    .option('--rpm <rpm>', 'speed: 33 (33⅓), 45, or as measured', numberOf)
    .option('--level <dB>', 'level of the side, re the profile', numberOf)
    .option('--pitch <pitch>', 'base pitch, such as 300lpi or 85um')
    .option('--width <length>', 'width of the unmodulated groove, such as 2mil or 51um')
    .option('--elliptical <Hz>', 'corner of the elliptical filter, or off', numberOrOff)
    .addOption(
      new Option('--planner <name>', 'whose plan it is, where the lathe executes a plan')
        .choices(PLANNERS)
        .default('turn-ahead'),
    )
    .option('--quiet', 'nothing on stderr but errors')
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (path: string, options: unknown) => {
      const { runAccept } = await import('./run-accept.js');
      run.done(await runAccept(path, options, run));
    });
}
