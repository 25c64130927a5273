import { Argument, type Command } from 'commander';
import { SHELLS, type Shell } from '../report/completion/command-tree.js';
import { DONE } from './exit-code.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import type { Run } from './run.js';

/** `furrow completion <shell>`: a script for the shell, made of the commands that there are. */
export function addCompletion(program: Command, { output, done }: Run): void {
  program
    .command('completion')
    .description('write a script that completes commands, options and files in a shell')
    .addArgument(
      new Argument('<shell>', 'which; its first lines say how to install it').choices(SHELLS),
    )
    .addHelpText('after', HELP_EPILOGUE)
    .action(async (shell: Shell) => {
      const [{ commandTree }, { completionScript }] = await Promise.all([
        import('./command-tree.js'),
        import('../report/completion/completion-script.js'),
      ]);
      await output.write(completionScript(shell, commandTree(program)));
      done(DONE);
    });
}
