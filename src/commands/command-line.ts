import { Command, CommanderError } from 'commander';
import { OutputError, UsageError } from '../errors.js';
import { furrowVersion } from '../version.js';
import { addAccept } from './accept.js';
import { bugText } from './bug-text.js';
import { addCompletion } from './completion.js';
import { BUG, DONE, NOT_WRITTEN, WRONG_USAGE } from './exit-code.js';
import { addFit } from './fit.js';
import { addForecast } from './forecast.js';
import { HELP_EPILOGUE } from './help-epilogue.js';
import { addIntake } from './intake.js';
import { addProfile } from './profile.js';
import { addSchema } from './schema.js';
import { addSide } from './side.js';
import { type StandardError, standardError } from './standard-error.js';
import { ClosedPipe, standardOutput } from './standard-output.js';
import type { Surroundings } from './surroundings.js';

/** Runs one command line and gives the exit code. */
export async function runCommandLine(
  args: readonly string[],
  surroundings: Surroundings,
): Promise<number> {
  const { stdout, stderr } = surroundings;
  const output = standardOutput(stdout);
  const errors = standardError(stderr, { isQuiet: false, isTerminal: false });
  // Help is written where everything else is; the parser itself cannot wait for that.
  const help: string[] = [];
  let code = DONE;
  const program = new Command('furrow')
    .description('Forecasts how a stereo premaster will lie on a lacquer disc.')
    .version(furrowVersion(), '-V, --version', 'show the version')
    .configureOutput({
      writeOut: (text) => help.push(text),
      writeErr: (text) => errors.plain(text),
    })
    .showHelpAfterError('(--help shows what there is)')
    .exitOverride()
    .addHelpText('after', HELP_EPILOGUE);
  const run = { surroundings, output, done: (exitCode: number) => (code = exitCode) };
  addForecast(program, run);
  addSide(program, run);
  addFit(program, run);
  addIntake(program, run);
  addAccept(program, run);
  addProfile(program, run);
  addSchema(program, run);
  addCompletion(program, run);
  try {
    await program.parseAsync(args, { from: 'user' }).catch(async (error: unknown) => {
      await output.write(help.join(''));
      throw error;
    });
    return code;
  } catch (error) {
    return tell(error, errors);
  }
}

/** Says what went wrong, and gives the exit code for it. */
function tell(error: unknown, { error: write }: StandardError): number {
  if (error instanceof ClosedPipe) return DONE;
  // The parser has already said it.
  if (error instanceof CommanderError) return error.exitCode === 0 ? DONE : WRONG_USAGE;
  if (error instanceof UsageError) {
    write(error.message);
    return WRONG_USAGE;
  }
  if (error instanceof OutputError) {
    write(error.message);
    return NOT_WRITTEN;
  }
  write(bugText(error));
  return BUG;
}
