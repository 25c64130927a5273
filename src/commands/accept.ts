import { type Command, Option } from 'commander';
import { FINDING_IDS } from '../model/forecast-types.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import type { Run } from './run.js';
import { addLatheOptions } from './shared-options.js';

/** `furrow accept <file>`: writes down that the house knows a finding and cuts all the same. */
export function addAccept(program: Command, run: Run): void {
  const command = program
    .command('accept')
    .description('accept a finding of a side, in furrow.accepted.json beside its file or sheet')
    .argument('<file>', 'the file, as it is forecast, or a side sheet (.json)')
    .option('--side <name>', 'which side of the sheet, where it has more than one')
    .addOption(new Option('--id <id>', 'which finding').choices(FINDING_IDS).makeOptionMandatory())
    .option('--at <mm:ss.s>', 'a time within it, where there is more than one')
    .requiredOption('--reason <text>', 'why it is cut all the same');
  addLatheOptions(command)
    .option('--quiet', 'nothing on stderr but errors')
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (path: string, options: unknown) => {
      const { runAccept } = await import('./run-accept.js');
      run.done(await runAccept(path, options, run));
    });
}
