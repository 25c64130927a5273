import type { Command } from 'commander';
import { HELP_EPILOGUE } from './help-epilogue.js';
import type { Run } from './run.js';
import {
  addFileOptions,
  addLatheOptions,
  addRunOptions,
  addTellingOptions,
} from './shared-options.js';

/** `furrow side <sheet...>`: sides made of several tracks. */
export function addSide(program: Command, run: Run): void {
  const command = program
    .command('side')
    .description('forecast sides of several tracks, as a side sheet has them')
    .argument('[sheet...]', 'side sheets: JSON with comments, see furrow schema sheet')
    .option('--from-cues <file>', "write a sheet with the tracks that a file's own marks make");
  addTellingOptions(addLatheOptions(command)).option(
    '--order',
    'with a running order that bends less; nothing is moved',
  );
  addFileOptions(command);
  // It is refused with what to do instead: see side-options.ts.
  command.options.find(({ long }) => long === '--client')?.hideHelp();
  addRunOptions(command)
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (sheets: string[], options: unknown) => {
      const { runSide } = await import('./run-side.js');
      run.done(await runSide(sheets, options, run));
    });
}
