import { type Command, Option } from 'commander';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { countOf, numberOf } from './option-values.js';
import type { Run } from './run.js';
import { addLatheOptions } from './shared-options.js';

/** `furrow intake <path...>`: the check of arriving files, a line each. */
export function addIntake(program: Command, run: Run): void {
  const command = program
    .command('intake')
    .description('judge files that arrive, a line each, by forecast and house rules')
    .argument(
      '[path...]',
      'WAV, AIFF, FLAC or motion files, folders, or patterns such as "sides/*.wav"',
    )
    .option('--files-from <file>', 'read further paths from a file, one a line; - is stdin')
    .option('--allow-empty', 'a folder without such files is no failure')
    .option('--follow', 'follow links that lead out of a folder; refused otherwise')
    .option('--rules <file>', "the house's own rules");
  addWatchOptions(command);
  addLatheOptions(command)
    .addOption(
      new Option('--units <system>', 'units of the text')
        .choices(['metric', 'us'])
        .default('metric'),
    )
    .addOption(new Option('--details', 'with every finding in words').conflicts(['json', 'ndjson']))
    .addOption(new Option('--json', 'write one JSON document').conflicts('ndjson'))
    .option('--ndjson', 'write a JSON object a line, as files are done')
    .option('--junit <file>', 'write a JUnit report (XML), a test case a file')
    .option('--jobs <count>', 'how many threads work at a time; all cores by default', countOf)
    .option('--quiet', 'nothing on stderr but errors')
    .addOption(
      new Option('--fail-on <severity>', 'exit 1 for findings from it on')
        .choices(['note', 'caution', 'fault', 'never'])
        .default('fault'),
    )
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (paths: string[], options: unknown) => {
      const { runIntake } = await import('./run-intake.js');
      run.done(await runIntake(paths, options, run));
    });
}

function addWatchOptions(command: Command): void {
  command
    .addOption(
      new Option(
        '--watch <dir>',
        'examine files as they arrive in a folder, until stopped; events as JSON, a line each',
      ).conflicts(['filesFrom', 'allowEmpty', 'details', 'json', 'ndjson', 'junit']),
    )
    .option('--out <dir>', 'with --watch: the folder of reports, NAME.furrow.json a file')
    .option(
      '--settle <seconds>',
      'with --watch: how long size and time stay as they are when a file is whole; 5 by default',
      numberOf,
    );
}
