import { mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { parseProfile } from '../../src/profile/profile-file.js';
import { intakeLineSchema, intakeSchema } from '../../src/report/intake-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { complaintsOf } from '../support/junit-complaints.js';
import { onTerminal } from '../support/on-terminal.js';
import { needProgram } from '../support/outside-program.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow, SHELL_COMMAND } from '../support/run-furrow.js';
import {
  longWav,
  mixedSides,
  NARROW_LATHE,
  programWav,
  type SideFile,
} from '../support/side-files.js';

const intake = (cwd: string, ...args: string[]) =>
  runFurrow(['intake', ...args], { cwd, env: { NO_COLOR: '1', LC_ALL: 'C.UTF-8' } });

const rulesOf = (rules: object): SideFile => ['house.json', JSON.stringify(rules)];
const cellsOf = (stdout: string) =>
  stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => line.split('\t'));

describe('files that arrive', () => {
  test('are a line each, in input order: path, verdict, worst finding, minutes, spare, level', async () => {
    const cwd = await filledFolder(mixedSides());
    const { stdout, stderr, exitCode } = await intake(cwd, '.');
    const cells = cellsOf(stdout);
    expect(cells.map(([path]) => path)).toEqual([...mixedSides().map(([name]) => name), '.']);
    for (const line of cells) expect(line).toHaveLength(6);
    expect(cells[2]).toEqual(['3 silent.wav', 'fault', 'silent', '00:03', expect.any(String), '-']);
    expect(cells[4]?.slice(0, 3)).toEqual(['5 cut short.wav', 'caution', 'truncated']);
    expect(cells[5]).toEqual(['6 no sound.wav', 'failed', 'not-wav', '-', '-', '-']);
    expect(cells[0]?.slice(3).join(' ')).toMatch(/^00:04 \d+\.\d [+-]?\d+\.\d$/);
    expect(stderr).toMatch(/^furrow: 6 no sound\.wav: byte 0: found "cutt"/m);
    expect(stderr).toMatch(/^furrow: 6 files judged: .*; 1 could not be read$/m);
    expect(exitCode).toBe(3);
  });

  test('give the same figures as their forecasts', async () => {
    const cwd = await filledFolder([['a.wav', programWav(6, 6)], NARROW_LATHE]);
    const forecast: unknown = JSON.parse(
      (await runFurrow(['forecast', '--json', 'a.wav'], { cwd })).stdout,
    );
    const { files } = intakeSchema.parse(JSON.parse((await intake(cwd, '--json', 'a.wav')).stdout));
    expect(forecast).toMatchObject({
      sides: [
        {
          verdict: files[0]?.verdict,
          durationSeconds: files[0]?.durationSeconds,
          fixed: { spareMm: files[0]?.spareMm },
          headroom: { recommendedDb: files[0]?.recommendedDb },
          findings: files[0]?.findings,
        },
      ],
    });
    expect(files[0]?.findings.length).toBeGreaterThan(0);
  });

  test('as JSON and as NDJSON keep to the published schemas (ajv)', async () => {
    const cwd = await filledFolder([
      ...mixedSides(),
      NARROW_LATHE,
      rulesOf({ sampleRates: [96_000], leastLand: '50um', headSilence: { least: 1 } }),
    ]);
    const args = ['.', '--rules', 'house.json'];
    const document: unknown = JSON.parse((await intake(cwd, '--json', ...args)).stdout);
    const { files, failures, folders } = intakeSchema.parse(document);
    expect(await isValid('intake', document)).toBe(true);
    const lines = (await intake(cwd, '--ndjson', ...args)).stdout.trimEnd().split('\n');
    const parsed = lines.map((line): unknown => JSON.parse(line));
    for (const line of parsed) {
      intakeLineSchema.parse(line);
      expect(await isValid('intake-ndjson', line)).toBe(true);
    }
    expect(lines).toHaveLength(files.length + failures.length + folders.length + 1);
    expect(parsed.at(-1)).toMatchObject({ type: 'summary', files: 6, failures: 1 });
    expect(folders).toMatchObject([{ path: '.', id: 'mixed-formats', severity: 'note' }]);
  });

  test('have the same bytes with one job and with several', async () => {
    const cwd = await filledFolder([['a.wav', longWav(130)], ...mixedSides()]);
    const [one, two] = await Promise.all(
      ['1', '2'].map((jobs) => intake(cwd, '--json', '--jobs', jobs, '.')),
    );
    expect(two?.stdout).toBe(one?.stdout);
    expect(two?.exitCode).toBe(3);
  });

  test('are told in words with --details, a finding a line', async () => {
    const cwd = await filledFolder([['a.wav', programWav(4, 8)], NARROW_LATHE]);
    const { stdout } = await intake(cwd, '--details', 'a.wav');
    expect(stdout).toMatch(/^ {2}fault {4}\d\d:\d\d\.\d, turn \d+.*: Overcut, land -.*\.$/m);
    expect(stdout.match(/Open the pitch ahead of it/g)).toHaveLength(1);
    expect(stdout.match(/: Overcut/g)?.length).toBeGreaterThan(1);
  });

  test('of several formats are told in words with --details, with --quiet too', async () => {
    const cwd = await filledFolder([
      ['a.wav', programWav(3)],
      ['b.wav', withRate(programWav(3), 48_000)],
    ]);
    const { stdout, stderr } = await intake(cwd, '--details', '--quiet', '.');
    expect(stderr).toBe('');
    expect(stdout).toMatch(/\n {2}note {5}formats differ in the folder \.: .*48 kHz \(b\.wav\)\n$/);
  });

  test('are what --files-from names; nothing is no success', async () => {
    const cwd = await filledFolder([['a.wav', programWav(3)]]);
    const list = await runFurrow(['intake', '--files-from', '-'], { cwd, input: 'a.wav\n' });
    expect(list.stdout).toMatch(/^a\.wav\tclear\t.*\n$/);
    await mkdir(join(cwd, 'empty'));
    expect(await intake(cwd, 'empty')).toMatchObject({
      stdout: 'empty\tfailed\tempty-folder\t-\t-\t-\n',
      exitCode: 3,
    });
    expect(await intake(cwd, 'empty', '--allow-empty')).toMatchObject({ stdout: '', exitCode: 0 });
  });
});

describe('--fail-on', () => {
  const files = (): SideFile[] => [['a.wav', programWav(4, 8)], NARROW_LATHE];

  test.each([
    [[], 1],
    [['--fail-on', 'never'], 0],
    [['--fail-on', 'note'], 1],
  ])('with %j exits %i for a fault', async (args, exitCode) => {
    expect((await intake(await filledFolder(files()), 'a.wav', ...args)).exitCode).toBe(exitCode);
  });

  test('counts what the house makes of a finding', async () => {
    const mono: SideFile[] = [
      ['a.wav', programWav(3)],
      rulesOf({ sampleRates: [8000], severity: { 'rule-rate': 'caution' } }),
    ];
    const cwd = await filledFolder(mono);
    const args = ['a.wav', '--rules', 'house.json'];
    expect((await intake(cwd, ...args)).exitCode).toBe(0);
    expect((await intake(cwd, ...args, '--fail-on', 'caution')).exitCode).toBe(1);
  });
});

describe("the house's rules", () => {
  test('on silence are judged by the sound, at the level that the house calls silence', async () => {
    const cwd = await filledFolder([
      ['a.wav', programWav(3)],
      rulesOf({ headSilence: { least: 1 }, tailSilence: { most: 0.01 } }),
    ]);
    const { stdout } = await intake(cwd, '--json', 'a.wav', '--rules', 'house.json');
    const { files } = intakeSchema.parse(JSON.parse(stdout));
    expect(files[0]?.findings.map(({ id }) => id)).toContain('rule-head');
    expect(files[0]?.notJudged).toEqual([]);
  });

  test('that only the sound tells are not judged of saved motion, which is said', async () => {
    const cwd = await filledFolder([
      ['a.wav', programWav(3)],
      rulesOf({ headSilence: { least: 1 } }),
    ]);
    await runFurrow(['forecast', '--save-motion', '.', 'a.wav'], { cwd });
    const { stderr, stdout } = await intake(cwd, 'a.motion', '--rules', 'house.json');
    expect(stderr).toContain('a.motion: rule-head is not judged');
    expect(stdout).toMatch(/^a\.motion\tclear\t/);
  });

  test('are refused before work, with line, found and nearest; exit 2', async () => {
    const cwd = await filledFolder([
      ['a.wav', programWav(3)],
      ['house.json', '{\n  "sampleRate": [1]\n}'],
    ]);
    expect(await intake(cwd, 'a.wav', '--rules', 'house.json')).toMatchObject({
      stdout: '',
      stderr: expect.stringContaining(
        'house.json:2: sampleRate: found an unknown field; the nearest is "sampleRates"',
      ),
      exitCode: 2,
    });
    expect((await intake(cwd, 'a.wav', '--rules', 'none.json')).exitCode).toBe(2);
  });

  test('of the example are rules, and keep to the published schema (ajv)', async () => {
    const example = new URL('../../examples/furrow.rules.json', import.meta.url).pathname;
    const { value } = parseProfile(example, await readFile(example, 'utf8'));
    expect(await isValid('rules', value)).toBe(true);
    const cwd = await filledFolder([['a.wav', programWav(3)]]);
    const { stdout, exitCode } = await intake(cwd, 'a.wav', '--rules', example);
    expect(stdout).toMatch(/^a\.wav\tfault\trule-/);
    expect(exitCode).toBe(1);
  });
});

test('files of several formats in a folder are told once, and can fail the run', async () => {
  const float = programWav(3);
  const cwd = await filledFolder([
    ['in/a.wav', programWav(3)],
    ['in/b.wav', programWav(3, 0, 2)],
    ['in/c.wav', withRate(float, 48_000)],
    rulesOf({ severity: { 'mixed-formats': 'fault' } }),
  ]);
  const plain = await intake(cwd, 'in');
  expect(plain.stdout).toMatch(/^in\tnote\tmixed-formats\t-\t-\t-$/m);
  expect(plain.stderr).toContain('formats differ in the folder in: 44.1 kHz (2), 48 kHz (c.wav)');
  expect(plain.exitCode).toBe(0);
  const args = ['in', '--rules', 'house.json', '--junit', 'out.xml'];
  expect((await intake(cwd, ...args)).exitCode).toBe(1);
  expect(await readFile(join(cwd, 'out.xml'), 'utf8')).toContain('<failure type="mixed-formats" ');
});

describe('--junit', () => {
  test('is written beside what stdout tells, also where a file fails', async (context) => {
    needProgram('xmllint', context);
    const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
    const { stdout } = await intake(cwd, '.', '--junit', 'out.xml');
    const xml = await readFile(join(cwd, 'out.xml'), 'utf8');
    expect(await complaintsOf(xml)).toBe('');
    expect(cellsOf(stdout).length).toBe(xml.match(/<testcase /g)?.length);
    expect(xml).toContain('<testcase classname="." name="6 no sound.wav">\n<error type="not-wav"');
  });

  test('never takes the place of what is read, and is refused where it cannot be', async () => {
    const cwd = await filledFolder([
      ['a.wav', programWav(3)],
      rulesOf({}),
      NARROW_LATHE,
      ['list.txt', 'a.wav\n'],
    ]);
    const read = ['a.wav', 'house.json', 'furrow.profile.json', 'list.txt'];
    for (const path of [...read, 'no/where.xml', '']) {
      const args = ['--files-from', 'list.txt', '--rules', 'house.json', '--junit', path];
      expect(await intake(cwd, ...args)).toMatchObject({
        stdout: '',
        stderr: expect.stringContaining('--junit: '),
        exitCode: 2,
      });
    }
  });

  test('is whole, and the exit code that of all files, where who reads the lines has left', async () => {
    const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
    const shell = `{ ${SHELL_COMMAND} intake . --junit out.xml; echo $? > code; } | true`;
    const { stderr } = await execa('sh', ['-c', shell], { cwd });
    const xml = await readFile(join(cwd, 'out.xml'), 'utf8');
    expect(xml.match(/<testcase /g)).toHaveLength(mixedSides().length + 1);
    expect(stderr).toMatch(/6 files judged/);
    expect(await readFile(join(cwd, 'code'), 'utf8')).toBe('3\n');
  });

  test('that cannot be written costs exit 4, and the lines are told', async () => {
    const cwd = await filledFolder([['a.wav', programWav(3)]]);
    const { stdout, stderr, exitCode } = await intake(cwd, 'a.wav', '--junit', '/dev/full');
    expect(stdout).toMatch(/^a\.wav\tclear/);
    expect(stderr).toMatch(/\/dev\/full: cannot be written/);
    expect(exitCode).toBe(4);
  });
});

describe('names of whatever kind', () => {
  const hostile = [
    'a\u001b[31m.wav',
    'b\nc.wav',
    'd\te.wav',
    '=1+1.wav',
    '-x.wav',
    '<script>.wav',
    'f\u202eg.wav',
  ];
  const RAW = /[^\P{Cc}\n\t]|\p{Bidi_Control}/u;

  test('are a line of six cells each and never get out raw', async () => {
    const cwd = await filledFolder(hostile.map((name): SideFile => [name, programWav(3)]));
    const { stdout, stderr } = await intake(cwd, '.', '--junit', 'out.xml');
    expect(stdout + stderr + (await readFile(join(cwd, 'out.xml'), 'utf8'))).not.toMatch(RAW);
    expect(cellsOf(stdout)).toHaveLength(hostile.length);
    for (const cells of cellsOf(stdout)) expect(cells).toHaveLength(6);
  });

  test('that are not UTF-8 cost their own line, which says so', async () => {
    const cwd = await filledFolder([['good.wav', programWav(3)]]);
    const bad = Buffer.concat([Buffer.from(`${cwd}/bad`), Buffer.of(0xff), Buffer.from('.wav')]);
    await writeFile(bad, programWav(3));
    const { stdout, stderr, exitCode } = await intake(cwd, '.');
    expect(stdout).toMatch(/^bad\ufffd\.wav\tfailed\tbad-name\t-\t-\t-$/m);
    expect(stdout).toMatch(/^good\.wav\tclear/m);
    expect(stderr).toMatch(/its name is not UTF-8/);
    expect(exitCode).toBe(3);
    const listed = await runFurrow(['intake', '--files-from', '-'], {
      cwd,
      input: Uint8Array.of(...bad, 10),
    });
    expect(listed.stdout).toMatch(/bad\ufffd\.wav\tfailed\tbad-name\t/);
  });

  test('that are links out of the folder are refused unless --follow', async () => {
    const cwd = await filledFolder([
      ['out.wav', programWav(3)],
      ['in/a.wav', programWav(3)],
    ]);
    await symlink('../out.wav', join(cwd, 'in', 'b.wav'));
    expect((await intake(cwd, 'in')).stdout).toMatch(/^in\/b\.wav\tfailed\tlink-outside\t/m);
    expect((await intake(cwd, 'in', '--follow')).stdout).toMatch(/^in\/b\.wav\tclear\t/m);
  });
});

test('on a terminal lines stand in columns that fit it, under a head', async (context) => {
  needProgram('tmux', context);
  const name = `${'long name of a side '.repeat(5)}.wav`;
  const cwd = await filledFolder([...mixedSides(), [name, programWav(3)]]);
  const { lines } = await onTerminal('intake --quiet .', { cwd, columns: 80 });
  const at = lines.findIndex((line) => line.startsWith('file '));
  const told = lines.slice(at).filter((line) => !/^(furrow:|of WAV|ended)/.test(line));
  expect(told[0]).toMatch(/^file +verdict {2}worst finding +min:s +mm left +fit dB$/);
  expect(
    new Set(told.slice(1, 6).map((line) => /(clear|caution|fault)/.exec(line)?.index)).size,
  ).toBe(1);
  for (const line of told) expect(line.length).toBeLessThanOrEqual(80);
  expect(told.join('\n')).toContain('…');
});

/** A WAV with another rate in its head. */
function withRate(bytes: Uint8Array, rate: number): Uint8Array {
  const changed = Uint8Array.from(bytes);
  const view = new DataView(changed.buffer);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * view.getUint16(32, true), true);
  return changed;
}
