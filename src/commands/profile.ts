import { type Command, Option } from 'commander';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { numberOf, numberOrOff } from './option-values.js';
import type { Run } from './run.js';

/** `furrow profile`: what the profile comes to; `furrow profile --init`: a first one. */
export function addProfile(program: Command, run: Run): void {
  program
    .command('profile')
    .description('tell every value of the profile and where it comes from, or write a first one')
    .addOption(
      new Option(
        '--init [file]',
        'write a profile with every field and a comment on each, to furrow.profile.json or the ' +
          'file; - is stdout',
      ).conflicts(['profile', 'pitch', 'width', 'elliptical', 'json']),
    )
    .option('--profile <file>', 'the profile of the lathe and the house')
    .option('--no-discovery', 'look for no furrow.profile.json in the folders above')
    .option('--disc <inches>', 'size of the disc: 12, 10 or 7', numberOf)
    .option('--rpm <rpm>', 'speed: 33 (33⅓), 45, or as measured', numberOf)
    .option('--pitch <pitch>', 'base pitch, such as 300lpi or 85um')
    .option('--width <length>', 'width of the unmodulated groove, such as 2mil or 51um')
    .option('--elliptical <Hz>', 'corner of the elliptical filter, or off', numberOrOff)
    .option('--json', 'write one JSON document')
    .option('--quiet', 'nothing on stderr but errors')
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (options: unknown) => {
      const { runProfile } = await import('./run-profile.js');
      run.done(await runProfile(options, run));
    });
}
