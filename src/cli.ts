import { runCommandLine } from './commands/command-line.js';

// The one place that knows the process: everything else is handed what it needs of it.

process.on('SIGINT', () => process.exit(130));

process.exitCode = await runCommandLine(process.argv.slice(2), {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  environment: process.env,
  isTerminal: process.stdout.isTTY === true,
  cwd: process.cwd(),
});
