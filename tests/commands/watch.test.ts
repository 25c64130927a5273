import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { execa } from 'execa';
import { describe, expect, onTestFinished, test } from 'vitest';
import { watchLineSchema } from '../../src/intake/watch/watch-event.js';
import { intakeSchema } from '../../src/report/intake-schema.js';
import { startWatch } from '../soak/watch-process.mjs';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow, SHELL_COMMAND } from '../support/run-furrow.js';
import { runInProcess } from '../support/run-in-process.js';
import { longWav, programWav, type SideFile } from '../support/side-files.js';
import { reportsIn } from '../support/watching.js';

/** Watches a folder with these files by the built command, with reports beside it. */
async function watched(files: readonly SideFile[], options: readonly string[] = [], env = {}) {
  const base = await filledFolder(files.map(([name, bytes]) => [`in/${name}`, bytes]));
  await mkdir(join(base, 'in'), { recursive: true });
  const [folder, out] = [join(base, 'in'), join(base, 'out')];
  const settle = ['--settle', '0.1', '--quiet'];
  const watch = await startWatch(folder, out, [...settle, ...options], () => {}, env);
  onTestFinished(async () => void (await watch.end('SIGKILL')));
  const until = async (type: string, times = 1) => {
    const count = () => watch.events.filter((event) => event.type === type).length;
    for (let tries = 0; count() < times; tries++) {
      if (tries === 3000) expect.fail(`no ${type} among ${JSON.stringify(watch.events)}`);
      await setTimeout(10);
    }
  };
  return { ...watch, base, folder, out, until };
}

test('a report says of a file what furrow intake says, and each line keeps to the schema', async () => {
  const watch = await watched([['sub/1.wav', programWav(2)]], ['--level', '3', '--jobs', '1']);
  await watch.until('examined');
  expect((await watch.end('SIGTERM')).code).toBe(0);
  for (const event of watch.events) {
    expect(watchLineSchema.safeParse(event).error, event.type).toBeUndefined();
  }
  const flags = ['--no-discovery', '--level', '3', '--json', '--fail-on', 'never'];
  const { stdout } = await runFurrow(['intake', 'sub/1.wav', ...flags], { cwd: watch.folder });
  const [file] = intakeSchema.parse(JSON.parse(stdout)).files;
  const report = (await reportsIn(watch.out)).get('sub/1.wav.furrow.json');
  expect(report?.result).toEqual(file);
});

test.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
  'at %s what is in work is finished, nothing else is begun, and the exit code is 0',
  async (signal) => {
    const watch = await watched([], ['--jobs', '1']);
    for (const [name, bytes] of [
      ['long', longWav(100)],
      ['short', programWav(1)],
    ] as const) {
      await writeFile(join(watch.folder, `${name}.wav`), bytes);
    }
    await watch.until('arrived', 2);
    await setTimeout(250);
    const { code, stderr } = await watch.end(signal);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const types = watch.events.map(({ type }) => type);
    const stopping = watchLineSchema.parse(watch.events[types.indexOf('stopping')]);
    if (stopping.type !== 'stopping') throw new Error('a line of another type');
    const before = types.slice(0, types.indexOf('stopping')).filter((type) => type === 'examined');
    const reports = await reportsIn(watch.out);
    expect(reports.size).toBe(before.length + stopping.inWork);
    expect(watch.events.at(-1)).toMatchObject({ type: 'stopped', examined: reports.size });
  },
);

test('a second signal ends it at once, and leaves no half of a report', async () => {
  const watch = await watched([], ['--jobs', '1']);
  await writeFile(join(watch.folder, 'long.wav'), longWav(300));
  await watch.until('arrived');
  await setTimeout(300);
  const ended = watch.end('SIGTERM');
  await watch.until('stopping');
  const again = await watch.end('SIGTERM');
  expect(await ended).toEqual(again);
  const isFinished = watch.events.at(-1)?.type === 'stopped';
  expect(again.code).toBe(isFinished ? 0 : 143);
  expect((await reportsIn(watch.out)).size).toBe(isFinished ? 1 : 0);
});

test('a file that ends its thread costs itself only, and is 70 in the end', async () => {
  const sabotage = new URL('../support/sabotage.mjs', import.meta.url).href;
  const env = { NODE_OPTIONS: `--import ${sabotage}`, SABOTAGE: 'death of a thread' };
  const sides: SideFile[] = [
    ['1 before.wav', programWav(1)],
    ['2 dies.wav', programWav(1, -1)],
    ['3 after.wav', programWav(1, -2)],
  ];
  const watch = await watched(sides, [], env);
  await watch.until('failed');
  await watch.until('examined', 2);
  await writeFile(join(watch.folder, '4 later.wav'), programWav(1, -3));
  await watch.until('examined', 3);
  const { code, stderr } = await watch.end('SIGTERM');
  expect(code).toBe(70);
  expect(stderr).toContain('2 dies.wav: this is a bug in furrow, not in the file');
  const failed = watch.events.filter(({ type }) => type === 'failed');
  expect(failed).toMatchObject([{ path: '2 dies.wav', code: 'crashed' }]);
  const report = (await reportsIn(watch.out)).get('2 dies.wav.furrow.json');
  expect(report?.failure).toMatchObject({ path: '2 dies.wav', code: 'crashed' });
});

test('names that could act on a terminal or lead out of the folder stay names', async () => {
  const names = [
    'a\n\u001b[31mb.wav',
    '-rf.wav',
    '=1+1.wav',
    '<script>.wav',
    `${'x'.repeat(251)}.wav`,
  ];
  const watch = await watched(names.map((name, at) => [name, programWav(1, -at)]));
  await watch.until('examined', names.length);
  await watch.end('SIGTERM');
  const reports = await reportsIn(watch.out);
  expect(new Set([...reports.values()].map(({ file }) => file.path))).toEqual(new Set(names));
  for (const place of reports.keys()) {
    expect(place).toMatch(/^[^-.\p{Cc}<>:"|?*/][^\p{Cc}<>:"|?*/]*\.furrow\.json$/u);
    expect(Buffer.byteLength(place)).toBeLessThanOrEqual(255);
  }
});

test('bytes that are known are examined again where the rules on names tell two names apart', async () => {
  const base = await filledFolder([['rules.json', '{ "name": "good.*" }']]);
  const watch = await watched([['good.wav', programWav(1)]], ['--rules', join(base, 'rules.json')]);
  await watch.until('examined');
  const copies = ['good too.wav', 'bad.wav', 'bad too.wav'];
  for (const name of copies)
    await copyFile(join(watch.folder, 'good.wav'), join(watch.folder, name));
  await watch.until('same-content');
  await watch.until('examined', 3);
  await watch.end('SIGTERM');
  const breaking = [...(await reportsIn(watch.out)).values()].filter(({ result }) =>
    result?.findings.some(({ id }) => id === 'rule-name'),
  );
  expect(breaking.map(({ file }) => file.path).toSorted()).toEqual(['bad too.wav', 'bad.wav']);
});

test('a reader of the events that leaves ends the watch quietly', async () => {
  const base = await filledFolder([['in/1.wav', programWav(1)]]);
  const flags = '--watch in --out out --settle 0.1 --quiet; echo code $? >&2';
  const line = `(${SHELL_COMMAND} intake ${flags}) | head -n 1`;
  const { stdout, stderr } = await execa('sh', ['-c', line], { cwd: base });
  expect(stdout.split('\n')).toHaveLength(1);
  expect(stderr).toBe('code 0');
});

describe('wrong usage', () => {
  test.each([
    [['--watch', 'tests'], 'add --out'],
    [['--watch', 'tests', '--out', '/tmp', 'more'], 'no further paths'],
    [['--watch', 'nowhere', '--out', '/tmp'], 'nothing of that name'],
    [['--watch', 'package.json', '--out', '/tmp'], 'no folder'],
    [['--watch', '', '--out', '/tmp'], 'a folder is expected'],
    [['--watch', 'tests', '--out', 'package.json'], 'not a folder'],
    [['--watch', 'tests', '--out', '/tmp', '--settle', '0'], '--settle: found 0'],
    [['--watch', 'tests', '--out', '/tmp', '--json'], 'cannot be used with'],
    [['--out', '/tmp', 'tests'], '--out: is for --watch'],
    [['--settle', '1', 'tests'], '--settle: is for --watch'],
  ])('%j is 2 and says what is wrong', async (args, words) => {
    const { exitCode, stdout, stderr } = await runInProcess(['intake', ...args]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(words);
  });
});
