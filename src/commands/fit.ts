import { type Command, Option } from 'commander';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { numberOf } from './option-values.js';
import type { Run } from './run.js';
import { addLatheOptions, addRunOptions } from './shared-options.js';

/** `furrow fit <path|sheet...>`: how loud, how long, and what would mend it. */
export function addFit(program: Command, run: Run): void {
  const command = program
    .command('fit')
    .description('find how loud and how long each side can be, and what would mend it')
    .argument('[path...]', 'WAV files, folders or patterns, and side sheets (.json)')
    .option('--files-from <file>', 'read further paths from a file, one a line; - is stdin')
    .option('--allow-empty', 'a folder without WAV files is no failure')
    .option('--follow', 'follow links that lead out of a folder; refused otherwise');
  addLatheOptions(command)
    .option(
      '--want <dB>',
      'find the base pitch for this level; the planned one by default',
      numberOf,
    )
    .addOption(
      new Option('--units <system>', 'units of the text')
        .choices(['metric', 'us'])
        .default('metric'),
    )
    .option('--details', 'with every remedy that was tried')
    .option(
      '--html <file>',
      'write a page that opens offline, with all this; into a folder, one a side',
    )
    .option(
      '--reel <wav>',
      'write the five hardest passages as they are, to cut as a test, and how to cut them',
    )
    .option('--json', 'write one JSON document');
  addRunOptions(command)
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (paths: string[], options: unknown) => {
      const { runFit } = await import('./run-fit.js');
      run.done(await runFit(paths, options, run));
    });
}
