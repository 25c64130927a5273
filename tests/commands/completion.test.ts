// Completion in the shells themselves: bash and zsh on a terminal, fish by its `complete -C`, which
// tells what it would offer.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { needProgram } from '../support/outside-program.js';
import { runFurrow } from '../support/run-furrow.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { typeInShell } from '../support/type-in-shell.js';

const SHELLS = ['bash', 'zsh', 'fish'] as const;
const scripts = new Map<string, string>();
const scriptOf = (shell: string) => scripts.get(shell) ?? '';

beforeAll(async () => {
  for (const shell of SHELLS) {
    const { stdout, stderr, exitCode } = await runFurrow(['completion', shell]);
    expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
    scripts.set(shell, stdout);
  }
});

test.each(SHELLS)('the first lines of the script for %s say how to install it', (shell) => {
  const lines = scriptOf(shell).split('\n').slice(0, 2).join('\n');
  expect(lines).toMatch(new RegExp(`^# To install.*: furrow completion ${shell} > ~/`, 'm'));
});

test('another shell is wrong usage', async () => {
  const { stderr, exitCode } = await runFurrow(['completion', 'tcsh']);
  expect(stderr).toContain('Allowed choices are bash, zsh, fish');
  expect(exitCode).toBe(2);
});

/** Files with whatever a shell would stumble over in their names. */
async function sidesFolder(): Promise<string> {
  const folder = await temporaryFolder();
  await mkdir(join(folder, 'sub folder'));
  for (const name of ["two words (it's a mix).wav", 'sub folder/song.wav', 'house.json']) {
    await writeFile(join(folder, name), '');
  }
  return folder;
}

const MIX = "two words (it's a mix).wav";

describe.each(['bash', 'zsh'] as const)('typed in %s', (shell) => {
  beforeEach((context) => {
    needProgram('script', context);
    needProgram(shell, context);
  });

  test.each([
    ['fore\t', ['forecast']],
    ['forecast --no-dis\t', ['forecast', '--no-discovery']],
    ['forecast --planner tur\t', ['forecast', '--planner', 'turn-ahead']],
    ['forecast --planner=tur\t', ['forecast', '--planner=turn-ahead']],
    ['forecast --planner fixed --uni\t us', ['forecast', '--planner', 'fixed', '--units', 'us']],
    ['completion f\t', ['completion', 'fish']],
    ['schema nd\t', ['schema', 'ndjson']],
    ['help comp\t', ['help', 'completion']],
    ['forecast two\t', ['forecast', MIX]],
    ['forecast "two\t', ['forecast', MIX]],
    ['forecast house.json two\t', ['forecast', 'house.json', MIX]],
    ['forecast --json -- two\t', ['forecast', '--json', '--', MIX]],
    ['forecast sub\tso\t', ['forecast', 'sub folder/song.wav']],
    ['forecast --profile ho\t', ['forecast', '--profile', 'house.json']],
    ['forecast --profile=ho\t', ['forecast', '--profile=house.json']],
    ['profile --init ho\t', ['profile', '--init', 'house.json']],
    ['profile --init --no\t', ['profile', '--init', '--no-discovery']],
  ])('%j completes to %j', async (line, expected) => {
    const folder = await sidesFolder();
    const script = scriptOf(shell);
    const typed = await typeInShell(shell, { folder, script, line: `furrow ${line}` });
    // zsh may join a value by = where it has completed the name.
    expect(typed.flatMap((word) => (word === '--units=' ? ['--units'] : [word]))).toEqual(expected);
  });

  test.each([['forecast --pitch ho\t'], ['forecast --pitch=ho\t'], ['completion bash ho\t']])(
    '%j completes to nothing: no file belongs there',
    async (line) => {
      const folder = await sidesFolder();
      const script = scriptOf(shell);
      const typed = await typeInShell(shell, { folder, script, line: `furrow ${line}` });
      expect(typed.join(' ')).toBe(line.trim());
    },
  );
});

describe('in fish', () => {
  beforeEach((context) => needProgram('fish', context));

  /** What is offered for the last word, without the descriptions. */
  async function offered(line: string): Promise<string[]> {
    const folder = await sidesFolder();
    await writeFile(join(folder, '.completion'), scriptOf('fish'));
    const { stdout } = await execa(
      'fish',
      ['--no-config', '-c', `source ./.completion; complete -C ${quoted(line)}`],
      { cwd: folder, env: { HOME: folder } },
    );
    return stdout.split('\n').flatMap((text) => text.split('\t')[0] ?? []);
  }

  test.each([
    ['fore', ['forecast']],
    ['forecast --no-dis', ['--no-discovery']],
    ['forecast --planner tur', ['turn-ahead']],
    ['forecast --planner=tur', ['--planner=turn-ahead']],
    ['completion f', ['fish']],
    ['schema nd', ['ndjson']],
    ['help comp', ['completion']],
    ['forecast two', [MIX]],
    ['forecast house.json two', [MIX]],
    ['forecast sub', ['sub folder/']],
    ['forecast --profile ho', ['house.json']],
    ['profile --init ho', ['house.json']],
    ['profile --init --no', ['--no-discovery']],
    ['forecast --pitch ho', ['']],
    ['completion bash f', ['']],
    ['profile ho', ['']],
  ])('%j is offered %j', async (line, expected) => {
    expect(await offered(`furrow ${line}`)).toEqual(expected);
  });
});

describe('every option that a help tells is offered', () => {
  test('in bash, called as the shell calls it', async (context) => {
    needProgram('bash', context);
    const { stdout: help } = await runFurrow(['--help']);
    const list = help.split('Commands:')[1]?.split('\n\n')[0] ?? '';
    const commands = [...list.matchAll(/^ {2}(\w+)/gm)].map(([, name = '']) => name);
    expect(commands).toEqual(expect.arrayContaining(['forecast', 'profile', 'completion']));
    const told: string[] = [];
    for (const command of commands.filter((name) => name !== 'help')) {
      const { stdout } = await runFurrow([command, '--help']);
      const options = [...stdout.matchAll(/^ {2}(?:-\w, )?(--[\w-]+)/gm)];
      told.push(`${command}: ${options.map(([, option]) => option).join(' ')}`);
      expect(options.length).toBeGreaterThan(0);
    }
    const asks = commands
      .filter((name) => name !== 'help')
      .map(
        (name) =>
          `COMP_WORDS=(furrow ${name} --); COMP_CWORD=2; _furrow; echo "${name}: \${COMPREPLY[*]}"`,
      );
    const { stdout } = await execa('bash', ['-c', [scriptOf('bash'), ...asks].join('\n')]);
    expect(stdout.split('\n')).toEqual(told);
  });
});

function quoted(text: string): string {
  return `'${text.replaceAll(/['\\]/g, '\\$&')}'`;
}
