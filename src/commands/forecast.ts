import { type Command, Option } from 'commander';
import { PLANNERS } from '../settings.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { countOf, numberOf, numberOrOff } from './option-values.js';
import type { Run } from './run.js';

/** `furrow forecast <path...>`: each file as one side. */
export function addForecast(program: Command, run: Run): void {
  program
    .command('forecast')
    .description('forecast each WAV file as one side: land, pitch, depth, headroom, findings')
    .argument('[path...]', 'WAV files, folders, or patterns such as "sides/*.wav"')
    .option('--files-from <file>', 'read further paths from a file, one a line; - is stdin')
    .option('--allow-empty', 'a folder without WAV files is no failure')
    .option('--profile <file>', 'the profile of the lathe and the house')
    .option('--no-discovery', 'look for no furrow.profile.json in the folders above')
    .option('--disc <inches>', 'size of the disc: 12, 10 or 7', numberOf)
    .option('--rpm <rpm>', 'speed: 33 (33⅓), 45, or as measured', numberOf)
    .option('--level <dB>', 'level of the side, re the profile', numberOf)
    .option('--pitch <pitch>', 'base pitch, such as 300lpi or 85um')
    .option('--width <length>', 'width of the unmodulated groove, such as 2mil or 51um')
    .option('--elliptical <Hz>', 'corner of the elliptical filter, or off', numberOrOff)
    .addOption(
      new Option('--planner <name>', 'whose plan is shown beside the machine')
        .choices(PLANNERS)
        .default('turn-ahead'),
    )
    .addOption(
      new Option('--units <system>', 'units of the text')
        .choices(['metric', 'us'])
        .default('metric'),
    )
    .option('--details', 'several sides: details of each; one side: every finding')
    .addOption(new Option('--brief', 'no details, one line a side').conflicts(['details', 'scale']))
    .addOption(
      new Option('--scale', 'the diameters to read off the lathe, a page a side').conflicts([
        'json',
        'ndjson',
      ]),
    )
    .option('--common-level', 'with the one level at which all sides fit and trace')
    .option('--against <file>', 'what has changed since an older file, WAV or motion')
    .addOption(new Option('--json', 'write one JSON document').conflicts('ndjson'))
    .option('--ndjson', 'write a JSON object a line, as sides are done')
    .option('--quarters', 'with columns per quarter turn in the JSON')
    .option('--table <file>', 'write a CSV with a row a side')
    .option('--csv <dir>', 'write a CSV a side with a row per quarter turn')
    .option('--markers <dir>', 'write findings and hot spots in file time, a CSV a side')
    .option('--cue <dir>', 'copy each WAV with findings and hot spots as cue points')
    .option('--client <file>', 'write for the client what is wrong and what to send instead')
    .option('--save-motion <dir>', 'save the motion of each side; it can be given like a WAV')
    .option('--jobs <count>', 'how many threads work at a time; all cores by default', countOf)
    .option('--quiet', 'nothing on stderr but errors')
    .addOption(
      new Option('--fail-on <severity>', 'exit 1 for findings from it on').choices([
        'note',
        'caution',
        'fault',
      ]),
    )
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (paths: string[], options: unknown) => {
      const { runForecast } = await import('./run-forecast.js');
      run.done(await runForecast(paths, options, run));
    });
}
