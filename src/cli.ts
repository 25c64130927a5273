import { availableParallelism } from 'node:os';
import { bugText } from './commands/bug-text.js';
import { runCommandLine } from './commands/command-line.js';
import { BUG } from './commands/exit-code.js';
import { CLEAR_LINE, standardError } from './commands/standard-error.js';
import { abandonWrites } from './report/write-atomic.js';

// The one place that knows the process: everything else is handed what it needs of it.

const SIGNALS = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const;

/** Asks a command that ends in its own time; null where it ends at once. */
let ask: (() => void) | null = null;

for (const [signal, exitCode] of Object.entries(SIGNALS)) {
  process.on(signal, () => {
    if (ask !== null) {
      ask();
      ask = null;
      return;
    }
    abandonWrites();
    if (process.stderr.isTTY) process.stderr.write(CLEAR_LINE);
    process.exit(exitCode);
  });
}

/** Runs a command line in this process, and says how it ended by the exit code. */
export async function furrow(args: readonly string[]): Promise<void> {
  // A run that nothing goes on with would otherwise end as if all were well.
  process.exitCode = BUG;
  process.once('beforeExit', tellUnfinished);
  process.exitCode = await runCommandLine(args, {
    // Made only where it is read.
    get stdin() {
      return process.stdin;
    },
    stdout: process.stdout,
    stderr: process.stderr,
    environment: process.env,
    isTerminal: process.stdout.isTTY === true,
    columns: columnsOf(process.stdout),
    isErrorTerminal: process.stderr.isTTY === true,
    errorColumns: columnsOf(process.stderr),
    now: () => performance.now(),
    cores: availableParallelism(),
    cwd: process.cwd(),
    askedToEnd: (asked) => {
      ask = asked;
    },
  });
  process.off('beforeExit', tellUnfinished);
}

/** Says that the command still waits for something when nothing is left that could come. */
function tellUnfinished(): void {
  abandonWrites();
  if (process.stderr.isTTY) process.stderr.write(CLEAR_LINE);
  const errors = standardError(process.stderr, { isQuiet: false, isTerminal: false });
  errors.error(bugText('nothing is left to wait for, but the command is not over'));
}

/** Some terminals report 0, which means that they do not know. */
function columnsOf({
  isTTY,
  columns,
}: Pick<typeof process.stdout, 'isTTY' | 'columns'>): number | null {
  return isTTY && columns > 0 ? columns : null;
}
