import { randomUUID } from 'node:crypto';
import { execa } from 'execa';
import { SHELL_COMMAND } from './run-furrow.js';

/** What a terminal shows when the command has ended. */
export interface Screen {
  /** Each line as it stands there, without blanks behind it; what has scrolled away comes first. */
  readonly lines: readonly string[];
  /** The same with the colours as they are sent. */
  readonly coloured: string;
  readonly exitCode: number;
}

export interface TerminalOptions {
  readonly cwd: string;
  readonly columns: number;
  readonly environment?: Readonly<Record<string, string>>;
  /** Waits until the screen shows this, then types `keys` as tmux names them. */
  readonly whenShown?: RegExp;
  readonly keys?: string;
}

const ROWS = 50;
/** Times to look before a test gives up; 50 ms between them. */
const MOST_LOOKS = 600;
const ENDED = /^ended with (\d+)$/m;

/**
 * Runs the built command in a terminal of its own, of tmux, with the user's settings of neither
 * shell nor tmux.
 * @param args as a shell reads them
 */
export async function onTerminal(args: string, options: TerminalOptions): Promise<Screen> {
  const tmux = terminalServer();
  const environment = {
    LC_ALL: 'C.UTF-8',
    PATH: process.env['PATH'] ?? '',
    ...options.environment,
  };
  const assignments = Object.entries(environment).map(([name, value]) => `'${name}=${value}'`);
  // The shell lives through Ctrl-C, to tell what became of the command.
  const command = `trap : INT; ${SHELL_COMMAND} ${args}; echo "ended with $?"; exec sleep 60`;
  const clean = ['-i', 'TERM=screen-256color', ...assignments].join(' ');
  const size = ['-x', String(options.columns), '-y', String(ROWS)];
  try {
    await tmux(
      'new-session',
      '-d',
      ...size,
      '-c',
      options.cwd,
      `env ${clean} sh -c ${quoted(command)}`,
    );
    await tmux('set-option', '-g', 'history-limit', '5000');
    if (options.whenShown !== undefined) await shown(tmux, options.whenShown);
    if (options.keys !== undefined) await tmux('send-keys', options.keys);
    const text = await shown(tmux, ENDED);
    const coloured = await tmux('capture-pane', '-p', '-e', '-S', '-');
    const lines = text.split('\n').map((line) => line.trimEnd());
    const end = lines.findIndex((line) => ENDED.test(line));
    return { lines: lines.slice(0, end), coloured, exitCode: Number(ENDED.exec(text)?.[1]) };
  } finally {
    await tmux('kill-server').catch(() => {});
  }
}

type Tmux = (...args: readonly string[]) => Promise<string>;

/** A server of its own: other terminals of the user are nobody's business. */
function terminalServer(): Tmux {
  const socket = `furrow-test-${randomUUID()}`;
  return async (...args) => {
    const { stdout } = await execa('tmux', ['-L', socket, '-f', '/dev/null', ...args], {
      env: { LC_ALL: 'C.UTF-8' },
    });
    return stdout;
  };
}

async function shown(tmux: Tmux, what: RegExp): Promise<string> {
  let text = '';
  for (let look = 0; look < MOST_LOOKS; look++) {
    text = await tmux('capture-pane', '-p', '-S', '-');
    if (what.test(text)) return text;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`the terminal never showed ${what}, but:\n${text}`);
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", `'\\''`)}'`;
}
