// Names that would act on a terminal, a spreadsheet or a reader's eye never get out raw.
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema, lineSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { onTerminal } from '../support/on-terminal.js';
import { needProgram } from '../support/outside-program.js';
import { runFurrow } from '../support/run-furrow.js';
import { longWav, NARROW_LATHE, programWav, type SideFile } from '../support/side-files.js';

const ESCAPES = 'a\u001b[31m\u001b]0;title\u0007.wav';
const LINES = 'b\nfurrow: forged\r.wav';
const BIDI = 'c\u202egnp\u2066.wav';
const FORMULA = '=1+1,"x".wav';
const MARKUP = '<img src=x onerror=alert(1)>&amp;.wav';
/** An escape of eight bits, as old terminals take it. */
const EIGHT_BITS = 'd\u009b31m.wav';
const NAMES = [ESCAPES, LINES, BIDI, FORMULA, MARKUP, EIGHT_BITS, '-rf.wav', '@SUM(A1)\t.wav'];
/** Of 255 bytes, the most that a file system takes. */
const LONG = `${'ü'.repeat(125)}x.wav`;
/** Controls but for the line break that ends a line, and what turns the direction of writing. */
const RAW = /[^\P{Cc}\n]|\p{Bidi_Control}/u;

const files = (): SideFile[] => [
  ...NAMES.map((name): SideFile => [name, programWav(3, 6)]),
  ...NAMES.map((name): SideFile => [`bad ${name}`, 'notes']),
  NARROW_LATHE,
];

const forecast = (cwd: string, ...args: string[]) => runFurrow(['forecast', ...args], { cwd });

describe.each([
  ['the table and details', ['.', '--details', '--common-level']],
  ['the scale', ['.', '--scale']],
  ['a comparison', [ESCAPES, '--against', BIDI]],
  ['the failures', NAMES.map((name) => `bad ${name}`)],
  ['wrong usage', [`no such ${ESCAPES}${LINES}*`]],
])('%s', (_, args) => {
  test('holds none of it, on stdout and on stderr', async () => {
    const cwd = await filledFolder(files());
    const { stdout, stderr } = await forecast(cwd, ...args);
    // A form feed of our own parts the pages of scales for a printer.
    expect(stdout.replaceAll('\n\f', '\n') + stderr).not.toMatch(RAW);
    expect(stderr).not.toMatch(/^furrow: forged/m);
    expect(stdout + stderr).toMatch(/\\u\{(1b|a|202e)\}/);
  });
});

test('progress on a terminal holds none of it', async (context) => {
  needProgram('tmux', context);
  const cwd = await filledFolder(files());
  await writeFile(join(cwd, ESCAPES), longWav(800));
  const { lines, coloured } = await onTerminal('forecast --brief .', {
    cwd,
    columns: 100,
    whenShown: /^\d+ of 16 files done, .*now a\\u\{1b\}\[31m/m,
  });
  expect(lines.join('')).not.toMatch(RAW);
  expect(coloured).not.toContain('\u001b]0;title');
  expect(lines.filter((line) => line.startsWith('furrow: forged'))).toEqual([]);
});

test('JSON keeps them exactly, in escapes; NDJSON stays a line an object', async () => {
  const cwd = await filledFolder(files());
  const { stdout } = await forecast(cwd, '.', '--json', '--quiet');
  const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
  expect(sides.map(({ sources }) => sources[0]?.path).toSorted()).toEqual(NAMES.toSorted());
  expect(failures.map(({ path }) => path).toSorted()).toEqual(
    NAMES.map((name) => `bad ${name}`).toSorted(),
  );
  expect(stdout).not.toMatch(RAW);
  const lines = (await forecast(cwd, '.', '--ndjson', '--quiet')).stdout.trimEnd().split('\n');
  expect(lines).toHaveLength(2 * NAMES.length + 1);
  for (const line of lines) {
    lineSchema.parse(JSON.parse(line));
    expect(line).not.toMatch(RAW);
  }
});

test('files hold none of it either: table, markers, client, their own names', async () => {
  const cwd = await filledFolder(files());
  await mkdir(join(cwd, 'out'));
  const flags = ['--csv', 'out', '--markers', 'out', '--table', 'out/table.csv', '--quiet'];
  await forecast(cwd, '.', '--client', 'out/client.txt', '--save-motion', 'out', ...flags);
  const names = await readdir(join(cwd, 'out'));
  expect(names).toHaveLength(NAMES.length * 3 + 2);
  expect(names.filter((name) => RAW.test(name) || name.includes('\n'))).toEqual([]);
  for (const name of names.filter((each) => !each.endsWith('.motion'))) {
    const text = await readFile(join(cwd, 'out', name), 'utf8');
    expect(text.replaceAll('\r\n', '\n'), name).not.toMatch(RAW);
  }
  const table = await readFile(join(cwd, 'out', 'table.csv'), 'utf8');
  expect(table).toContain(`"'=1+1,""x"".wav"`);
  expect(table).toMatch(/^'-rf\.wav,/m);
  expect(table).toMatch(/^'@SUM\(A1\)\\u\{9\}\.wav,/m);
  expect(table.trimEnd().split('\r\n')).toHaveLength(2 * NAMES.length + 1);
});

test('pages show them as text: nothing of a name is markup, and no control is in it', async () => {
  const cwd = await filledFolder(files());
  await mkdir(join(cwd, 'pages'));
  const { exitCode } = await forecast(
    cwd,
    '.',
    '--html',
    'pages',
    '--cutsheet',
    's.html',
    '--quiet',
  );
  expect(exitCode).toBe(3);
  const pages = (await readdir(join(cwd, 'pages'))).map((name) => join('pages', name));
  expect(pages.length).toBeGreaterThan(NAMES.length);
  for (const page of [...pages, 's.html']) {
    const html = await readFile(join(cwd, page), 'utf8');
    expect(RAW.exec(html)?.[0], page).toBeUndefined();
    expect(html.includes('<img src=x'), page).toBe(false);
  }
  const sheet = await readFile(join(cwd, 's.html'), 'utf8');
  expect(sheet.includes('&#60;img src=x onerror=alert(1)&#62;&#38;amp;.wav')).toBe(true);
});

test('a name of 255 bytes is read, and what is named after it can be written', async () => {
  const cwd = await filledFolder([[LONG, programWav(3)]]);
  await mkdir(join(cwd, 'out'));
  const flags = ['--csv', 'out', '--markers', 'out', '--cue', 'out', '--save-motion', 'out'];
  const { stdout, stderr, exitCode } = await forecast(cwd, '.', ...flags, '--html', 'out/x.html');
  expect([stderr.replace(/^furrow: (profile|no profile).*\n/, ''), exitCode]).toEqual(['', 0]);
  expect(stdout).toContain('üü');
  expect((await readdir(join(cwd, 'out'))).filter((name) => name.startsWith('ü'))).toHaveLength(4);
});
