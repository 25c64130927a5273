/**
 * The commands of README.md, run as they stand. Every ```sh block is one script; it is to exit 0,
 * or what `# exits N` behind its last line says. They run in order, in a copy of what a clone
 * holds after `npm ci`, with `furrow` on the path as `npm link` puts it there.
 * Left out, because this is a test run itself: `npm ci`, which would install anew, and `npm test`,
 * which would run this file again. What is joined to them by && is run.
 */
import { cp, mkdir, symlink } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { execa } from 'execa';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ran } from '../support/run-furrow.js';
import { sharedFolder } from '../support/shared-folder.js';
import { blocks, README, ROOT } from './markdown.js';

const LEFT_OUT = ['npm ci', 'npm test'];

interface Script {
  readonly script: string;
  readonly exitCode: number;
}

function scriptOf(block: string): Script {
  const exits = /# exits (\d+)\s*$/.exec(block);
  const commands = block.trim().split(' && ');
  const script = commands.filter((command) => !LEFT_OUT.includes(command)).join(' && ');
  return { script, exitCode: Number(exits?.[1] ?? 0) };
}

const scripts = blocks(README, 'sh')
  .map(scriptOf)
  .filter(({ script }) => script !== '');
const [demo = '', album = '', arriving = ''] = blocks(README, 'text');
const scriptWith = (part: string) => scripts.find(({ script }) => script.includes(part))?.script;

describe('in a clone', () => {
  const folder = sharedFolder();
  const results = new Map<string, Pick<Ran, 'exitCode' | 'stdout'>>();

  beforeAll(async () => {
    const clone = await folder();
    const isNoSide = (path: string) => !path.endsWith('.wav');
    await cp(join(ROOT, 'examples'), join(clone, 'examples'), {
      recursive: true,
      filter: isNoSide,
    });
    await cp(join(ROOT, 'bin'), join(clone, 'bin'), { recursive: true });
    await cp(join(ROOT, 'package.json'), join(clone, 'package.json'));
    await symlink(join(ROOT, 'dist'), join(clone, 'dist'));
    await mkdir(join(clone, 'path'));
    await symlink(join(ROOT, 'bin', 'furrow.js'), join(clone, 'path', 'furrow'));
    const path = [join(clone, 'path'), process.env['PATH'] ?? ''].join(delimiter);
    for (const { script } of scripts) {
      const { exitCode, stdout } = await execa('sh', ['-e', '-c', script], {
        cwd: clone,
        env: { PATH: path, NO_COLOR: '1', LC_ALL: 'C.UTF-8', TERM: 'xterm' },
        reject: false,
      });
      results.set(script, { exitCode, stdout });
    }
  }, 300_000);

  test.each(scripts)('$script', ({ script, exitCode }) => {
    const result = results.get(script);
    expect(result?.exitCode).toBe(exitCode);
    // The exit code of a pipe is its last program's, which could be content with nothing.
    if (!script.includes(' > ')) expect(result?.stdout).not.toBe('');
  });

  test.each([
    ['the demo', 'npm run demo', demo, 50],
    ['the album', 'furrow side --profile', album, 30],
    ['what arrived', 'furrow intake', arriving, 2],
  ])('%s prints what the document shows, but for what … stands for', (_, part, output, least) => {
    const printed = results.get(scriptWith(part) ?? '')?.stdout.split('\n') ?? [];
    const shown = output.split('\n').filter((line) => line !== '' && line.trim() !== '…');
    expect(shown.length).toBeGreaterThan(least);
    let from = 0;
    for (const line of shown) {
      const at = printed.indexOf(line, from);
      expect(at, `missing, or not in this place: ${line}`).toBeGreaterThanOrEqual(0);
      from = at + 1;
    }
  });
});

test('the first two blocks are the two commands to begin with', () => {
  expect(blocks(README, 'sh').slice(0, 2)).toEqual([
    'npm ci && npm run demo\n',
    'npm ci && npm test\n',
  ]);
});

test('some block shows an exit code other than 0, and some each thing that furrow does', () => {
  expect(scripts.map(({ exitCode }) => exitCode)).toContain(1);
  const all = scripts.map(({ script }) => script).join('\n');
  const parts = ['--json', '--ndjson', 'furrow schema', '--files-from', '--brief', '--scale'];
  const desk = [
    'furrow intake',
    '--rules',
    '--common-level',
    '--against',
    '--save-motion',
    '.motion',
    'furrow accept',
  ];
  for (const part of [
    ...parts,
    ...desk,
    '--client',
    '--cue',
    'furrow profile',
    'furrow completion',
  ]) {
    expect(all).toContain(part);
  }
});
