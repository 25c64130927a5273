import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';

const READY = 'READY> ';
const GOT = /GOT((?:<[^>]*>)*)END/;

/** What makes each shell read a file of ours, and nothing of the user's, before its first prompt. */
const SHELLS = {
  bash: { command: 'bash --noprofile --rcfile start -i', file: 'start', before: '' },
  zsh: { command: 'zsh -i', file: '.zshrc', before: 'autoload -Uz compinit && compinit -D -u\n' },
} as const;

/**
 * Types a line into an interactive shell on a terminal of its own, presses return, and gives the
 * arguments that the command was handed. `\t` asks for completion.
 * @param script what the shell is to source; the command itself is a stand-in
 */
export async function typeInShell(
  shell: keyof typeof SHELLS,
  { folder, script, line }: { folder: string; script: string; line: string },
): Promise<string[]> {
  const { command, file, before } = SHELLS[shell];
  const standIn = `furrow() { printf GOT; printf '<%s>' "$@"; printf 'END\\n'; }\n`;
  await writeFile(join(folder, '.completion'), script);
  const start = `${before}PS1='${READY}'\n${standIn}source ./.completion\n`;
  await writeFile(join(folder, file), start);
  const terminal = execa('script', ['-qec', command, '/dev/null'], {
    cwd: folder,
    env: { PATH: process.env['PATH'] ?? '', HOME: folder, ZDOTDIR: folder, TERM: 'dumb' },
    extendEnv: false,
    reject: false,
    stdin: 'pipe',
    timeout: 20_000,
  });
  let shown = '';
  let isTyped = false;
  terminal.stdout.on('data', (data: Buffer) => {
    shown += data.toString('utf8');
    if (!isTyped && shown.includes(READY)) {
      isTyped = true;
      terminal.stdin.write(`${line}\n`);
    } else if (GOT.test(shown)) terminal.stdin.write('exit\n');
  });
  await terminal;
  const got = GOT.exec(shown)?.[1];
  if (got === undefined)
    throw new Error(`the command was not reached; the terminal shows ${shown}`);
  return [...got.matchAll(/<([^>]*)>/g)].map(([, argument = '']) => argument);
}
