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
const NAMES = [ESCAPES, LINES, BIDI, FORMULA];
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
  await writeFile(join(cwd, ESCAPES), longWav(200));
  const { lines, coloured } = await onTerminal('forecast --brief .', {
    cwd,
    columns: 100,
    whenShown: /^\d of 8 files done, .*now a\\u\{1b\}\[31m/m,
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
  expect(lines).toHaveLength(9);
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
  expect(names).toHaveLength(4 * 3 + 2);
  expect(names.filter((name) => RAW.test(name) || name.includes('\n'))).toEqual([]);
  for (const name of names.filter((each) => !each.endsWith('.motion'))) {
    const text = await readFile(join(cwd, 'out', name), 'utf8');
    expect(text.replaceAll('\r\n', '\n'), name).not.toMatch(RAW);
  }
  const table = await readFile(join(cwd, 'out', 'table.csv'), 'utf8');
  expect(table).toContain(`"'=1+1,""x"".wav"`);
  expect(table.trimEnd().split('\r\n')).toHaveLength(9);
});
