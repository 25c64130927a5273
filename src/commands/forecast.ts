import type { Command } from 'commander';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { threadsAhead } from './pool-for.js';
import type { Run } from './run.js';
import {
  addFileOptions,
  addLatheOptions,
  addRunOptions,
  addTellingOptions,
} from './shared-options.js';

/** `furrow forecast <path...>`: each file as one side. */
export function addForecast(program: Command, run: Run): void {
  const command = program
    .command('forecast')
    .description('forecast each file as one side: land, pitch, depth, headroom, findings')
    .argument(
      '[path...]',
      'WAV, AIFF, FLAC or motion files, folders, or patterns such as "sides/*.wav"',
    )
    .option('--files-from <file>', 'read further paths from a file, one a line; - is stdin')
    .option('--allow-empty', 'a folder without such files is no failure')
    .option('--follow', 'follow links that lead out of a folder; refused otherwise');
  addTellingOptions(addLatheOptions(command)).option(
    '--against <file>',
    'what has changed since an older file, WAV or motion',
  );
  addFileOptions(command)
    .option('--cue <dir>', 'copy each WAV with findings and hot spots as cue points')
    .option('--save-motion <dir>', 'save the motion of each side; it can be given like a WAV');
  addRunOptions(command)
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (paths: string[], options: { readonly jobs?: number }) => {
      const { cores, cwd } = run.surroundings;
      // Begun first: to load the rest takes as long as threads do.
      const pool = await threadsAhead(paths, options.jobs ?? cores, cwd);
      try {
        const { runForecast } = await import('./run-forecast.js');
        run.done(await runForecast(paths, options, run, pool));
      } finally {
        await pool?.close();
      }
    });
}
