// A program that does not exist, with all that a shell could trip over, in the shells themselves.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { beforeEach, describe, expect, test } from 'vitest';
import type { CommandTree } from '../../src/report/completion/command-tree.js';
import { completionScript } from '../../src/report/completion/completion-script.js';
import { needProgram } from '../support/outside-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { typeInShell } from '../support/type-in-shell.js';

const NASTY = `it's [a] "test": of $HOME, \`pwd\` (all) \\ of {them}`;

const tree: CommandTree = {
  name: 'furrow',
  options: [{ flags: ['-V', '--version'], description: NASTY, value: null }],
  commands: [
    {
      name: 'cut',
      description: NASTY,
      options: [
        { flags: ['-q', '--quick'], description: NASTY, value: null },
        {
          flags: ['-o', '--out'],
          description: NASTY,
          value: { name: "folder's", expected: { kind: 'folder' }, isOptional: false },
        },
        {
          flags: ['--mode'],
          description: NASTY,
          value: {
            name: 'mode',
            expected: { kind: 'choices', choices: ['rough', 'fine'] },
            isOptional: false,
          },
        },
      ],
      places: [{ name: 'a:b', expected: { kind: 'file' }, isOptional: true, isRepeated: true }],
    },
  ],
};

/** A folder with a file and a folder that begin alike. */
async function mixedFolder(): Promise<string> {
  const folder = await temporaryFolder();
  await writeFile(join(folder, 'outcome.wav'), '');
  await mkdir(join(folder, 'outer folder'));
  return folder;
}

describe.each(['bash', 'zsh'] as const)('in %s', (shell) => {
  beforeEach((context) => {
    needProgram('script', context);
    needProgram(shell, context);
  });

  test.each([
    ['c\t', ['cut']],
    ['cut --qui\t', ['cut', '--quick']],
    ['cut --mode r\t', ['cut', '--mode', 'rough']],
    ['cut -o out\t', ['cut', '-o', 'outer folder/']],
    ['cut outc\t', ['cut', 'outcome.wav']],
  ])('%j completes to %j', async (line, expected) => {
    const script = completionScript(shell, tree);
    const folder = await mixedFolder();
    const typed = await typeInShell(shell, { folder, script, line: `furrow ${line}` });
    // zsh takes the last stroke of a folder off again when the line ends there.
    const told = typed.map((word) => (word === 'outer folder' ? 'outer folder/' : word));
    expect(told).toEqual(expected);
  });
});

describe('in fish', () => {
  beforeEach((context) => needProgram('fish', context));

  test.each([
    ['c', [`cut\t${NASTY}`]],
    ['cut --qui', [`--quick\t${NASTY}`]],
    ['cut --mode r', [`rough\t${NASTY}`]],
    ['cut -o out', ['outer folder/']],
    ['cut outc', ['outcome.wav']],
  ])('%j is offered %j, with its description', async (line, expected) => {
    const folder = await mixedFolder();
    await writeFile(join(folder, '.completion'), completionScript('fish', tree));
    const { stdout } = await execa(
      'fish',
      ['--no-config', '-c', `source ./.completion; complete -C 'furrow ${line}'`],
      { cwd: folder, env: { HOME: folder } },
    );
    // What fish says of a file or a folder is its own.
    const told = stdout.split('\n').map((text) => text.replace(/^(out[^\t]*)\t.*$/, '$1'));
    expect(told).toEqual(expected);
  });
});
