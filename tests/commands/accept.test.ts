import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parseAccepted } from '../../src/accepted/parse-accepted.js';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { inventedProgram, louderBetween, RATE } from '../support/invented-program.js';
import { runFurrow } from '../support/run-furrow.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { wavBytes, wordBytes } from '../support/wav-writer.js';

const NAME = 'invented.wav';
/** Lathe of one narrow pitch, on which the program overcuts. */
const PROFILE = JSON.stringify({ executes: 'fixed', basePitch: '90um' });

const { left, right } = louderBetween(inventedProgram(12), 3);
const WORDS = Array.from({ length: 2 * 12 * RATE }, (_, word) => {
  const value = (word % 2 === 0 ? left : right)[Math.floor(word / 2)] ?? 0;
  return Math.round(30_000 * value);
});

async function fill(folder: string): Promise<void> {
  await writeFile(join(folder, NAME), wavBytes({ words: WORDS }));
  await writeFile(join(folder, 'furrow.profile.json'), PROFILE);
}

/** A folder with the program and the profile. */
async function folderOf(): Promise<string> {
  const folder = await temporaryFolder();
  await fill(folder);
  return folder;
}

async function accept(folder: string, flags: readonly string[], path = NAME) {
  return await runFurrow(['accept', path, ...flags], { cwd: folder });
}

/** What the command itself says of the program, once for all tests. */
async function overcutsFound(): Promise<{ from: number; until: number; valueUm: number }[]> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  try {
    await fill(folder);
    const { stdout } = await runFurrow(['forecast', '--json', NAME], { cwd: folder });
    const { sides } = forecastSchema.parse(JSON.parse(stdout));
    const overcuts = (sides[0]?.findings ?? []).filter(({ id }) => id === 'overcut');
    return overcuts.map(({ atSeconds, untilSeconds, value }) => ({
      from: atSeconds ?? Number.NaN,
      until: untilSeconds ?? Number.NaN,
      valueUm: value ?? Number.NaN,
    }));
  } finally {
    await rm(folder, { recursive: true });
  }
}

const overcuts = await overcutsFound();
const [first, second] = overcuts;
const AT_FIRST = ['--at', String(first?.from)] as const;

async function acceptedIn(folder: string) {
  const text = await readFile(join(folder, 'furrow.accepted.json'), 'utf8');
  return { text, entries: parseAccepted('furrow.accepted.json', text) };
}

test('a finding is accepted with its stretch and the hash of its sound alone', async () => {
  const folder = await folderOf();
  const ran = await accept(folder, ['--id', 'overcut', ...AT_FIRST, '--reason', ' only kisses ']);
  expect(ran).toMatchObject({ exitCode: 0, stdout: '' });
  expect(ran.stderr).toMatch(/furrow: accepted in furrow\.accepted\.json: fault: .*Overcut/);
  const { entries } = await acceptedIn(folder);
  expect(entries).toEqual([
    {
      id: 'overcut',
      side: NAME,
      fromSeconds: first?.from,
      untilSeconds: first?.until,
      severity: 'fault',
      value: expect.any(Number),
      reason: 'only kisses',
      audioSha256: createHash('sha256')
        .update(wordBytes(WORDS, 'pcm', 16))
        .digest('hex'),
    },
  ]);
  // The forecast tells it to 0.01 µm.
  expect(1e6 * (entries[0]?.value ?? Number.NaN)).toBeWithin(first?.valueUm ?? 0, 0.006, 0);
});

test('where there are several it lists them, asks which, and writes nothing', async () => {
  const folder = await folderOf();
  expect(overcuts.length).toBeGreaterThan(1);
  const { exitCode, stderr } = await accept(folder, ['--id', 'overcut', '--reason', 'x']);
  expect(exitCode).toBe(2);
  expect(stderr).toContain(`has ${overcuts.length} findings overcut; say with --at which one`);
  expect(stderr.match(/fault: .*Overcut/g)).toHaveLength(overcuts.length);
  expect(await readdir(folder)).toEqual(['furrow.profile.json', NAME]);
});

test('a finding of any plan that can be executed can be accepted, of the tightest too', async () => {
  const folder = await folderOf();
  await writeFile(
    join(folder, 'plan.json'),
    '{ "executes": "plan", "basePitch": "90um", "pitchMax": "91um" }',
  );
  const plan = ['--profile', 'plan.json', '--planner', 'tightest'];
  const { stdout } = await runFurrow(['forecast', NAME, '--json', ...plan], { cwd: folder });
  const [side] = forecastSchema.parse(JSON.parse(stdout)).sides;
  const finding = side?.findings.find(({ atSeconds }) => atSeconds !== null);
  const at = ['--id', finding?.id ?? '', '--at', String(finding?.atSeconds)];
  const ran = await accept(folder, [...at, '--reason', 'x', ...plan]);
  expect(ran.stderr).toContain('accepted in furrow.accepted.json: ');
  expect(ran.exitCode).toBe(0);
  expect((await acceptedIn(folder)).entries).toMatchObject([{ id: finding?.id }]);
});

test('a second one is added, and the first again is replaced; comments stay', async () => {
  const folder = await folderOf();
  const flags = (atSeconds: number | undefined, reason: string) =>
    ['--id', 'overcut', '--at', String(atSeconds), '--reason', reason, '--quiet'] as const;
  expect(await accept(folder, flags(first?.from, 'one'))).toMatchObject({ stderr: '' });
  const path = join(folder, 'furrow.accepted.json');
  await writeFile(path, (await readFile(path, 'utf8')).replace('"one"', '"one" /* by ear */'));
  await accept(folder, flags(second?.from, 'two'));
  await accept(folder, flags(first?.from, 'again'));
  const { entries, text } = await acceptedIn(folder);
  expect(entries.map(({ reason }) => reason)).toEqual(['again', 'two']);
  expect(text).toContain('"again" /* by ear */,');
});

test('the list lies beside the file, wherever the command runs', async () => {
  const folder = await folderOf();
  const flags = ['--id', 'overcut', ...AT_FIRST, '--reason', 'x', '--profile'];
  const elsewhere = await temporaryFolder();
  const profile = join(folder, 'furrow.profile.json');
  const ran = await accept(elsewhere, [...flags, profile], join(folder, NAME));
  expect(ran.exitCode).toBe(0);
  expect((await acceptedIn(folder)).entries).toMatchObject([{ side: NAME }]);
  expect(await readdir(elsewhere)).toEqual([]);
});

describe('what is wrong is said, and nothing is written', () => {
  const overcut = ['--id', 'overcut', '--reason', 'x'];
  test.each([
    ['an unknown id', ['--id', 'overcutt', '--reason', 'x'], 2, /Allowed choices are overcut,/],
    ['no reason', ['--id', 'overcut'], 2, /required option '--reason/],
    ['an empty reason', ['--id', 'overcut', '--reason', ' '], 2, /--reason: found nothing/],
    ['no time', [...overcut, '--at', 'soon'], 2, /--at: found "soon", expected a time/],
    [
      'another time',
      [...overcut, '--at', '99:00'],
      2,
      /--at: .* no finding overcut there, but these:/,
    ],
    [
      'another finding',
      ['--id', 'silent', '--reason', 'x'],
      2,
      /no finding silent .*; found are .*overcut/,
    ],
  ] as const)('%s', async (_, flags, code, expected) => {
    const folder = await folderOf();
    const { exitCode, stderr } = await accept(folder, flags);
    expect(stderr).toMatch(expected);
    expect(exitCode).toBe(code);
    expect(await readdir(folder)).toEqual(['furrow.profile.json', NAME]);
  });

  test('a file that is none is told like in a forecast', async () => {
    const folder = await folderOf();
    await writeFile(join(folder, 'notes.wav'), 'cutting notes, not sound');
    const ran = await accept(folder, [...overcut], 'notes.wav');
    expect(ran.exitCode).toBe(3);
    expect(ran.stderr).toMatch(/furrow: notes\.wav: /);
    expect(ran.stderr).not.toContain('bug');
  });

  test('a list that is wrong stays as it is', async () => {
    const folder = await folderOf();
    const path = join(folder, 'furrow.accepted.json');
    await writeFile(path, '{ "accepted": 1 }');
    const { exitCode, stderr } = await accept(folder, [...overcut, '--at', '1']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('furrow.accepted.json: accepted: found 1, expected a list of entries');
    expect(await readFile(path, 'utf8')).toBe('{ "accepted": 1 }');
  });

  test('a place that cannot be written to', async () => {
    const folder = await folderOf();
    await symlink(join('gone', 'list.json'), join(folder, 'furrow.accepted.json'));
    const ran = await accept(folder, [...overcut, ...AT_FIRST]);
    expect(ran.exitCode).toBe(4);
    expect(ran.stderr).toMatch(/furrow\.accepted\.json: cannot be written/);
  });
});

test('what is written keeps to the published schema (ajv), and leaves no other file', async () => {
  const folder = await folderOf();
  await accept(folder, ['--id', 'overcut', ...AT_FIRST, '--reason', 'x']);
  const { text } = await acceptedIn(folder);
  const schema: unknown = JSON.parse((await runFurrow(['schema', 'accepted'])).stdout);
  if (typeof schema !== 'object' || schema === null) throw new Error('no schema');
  const validate = new Ajv2020({ allowUnionTypes: true }).compile(schema);
  expect(validate(JSON.parse(text.replaceAll(/^\/\/.*$/gm, '')))).toBe(true);
  expect(validate({ format: 'furrow.accepted/1', accepted: [{}] })).toBe(false);
  expect(await readdir(folder)).toEqual(['furrow.accepted.json', 'furrow.profile.json', NAME]);
});
