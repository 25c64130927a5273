import { type Command, Option } from 'commander';
import { PLANNERS } from '../settings.js';
import { countOf, numberOf, numberOrOff } from './option-values.js';

/** Options that decide on the profile, and what is asked of a side. */
export function addLatheOptions(command: Command): Command {
  return command
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
    );
}

/** Options that decide what is told of sides on stdout. */
export function addTellingOptions(command: Command): Command {
  return command
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
    .addOption(new Option('--json', 'write one JSON document').conflicts('ndjson'))
    .option('--ndjson', 'write a JSON object a line, as sides are done')
    .option('--quarters', 'with columns per quarter turn in the JSON');
}

/** Options that have results written into files. */
export function addFileOptions(command: Command): Command {
  return command
    .option('--table <file>', 'write a CSV with a row a side')
    .option('--csv <dir>', 'write a CSV a side with a row per quarter turn')
    .option('--markers <dir>', 'write findings and hot spots in file time, a CSV a side')
    .option('--html <file>', 'write a page that opens offline; into a folder, one a side')
    .option('--cutsheet <file>', 'write a page of A4 a side to lie beside the lathe (HTML)')
    .option('--reel <wav>', 'write the five hardest passages to cut as a test, and how to cut them')
    .option('--client <file>', 'write for the client what is wrong and what to send instead');
}

/** Options of a run as a whole. */
export function addRunOptions(command: Command): Command {
  return command
    .option('--jobs <count>', 'how many threads work at a time; all cores by default', countOf)
    .option('--quiet', 'nothing on stderr but errors')
    .addOption(
      new Option('--fail-on <severity>', 'exit 1 for findings from it on').choices([
        'note',
        'caution',
        'fault',
      ]),
    );
}
