// README.md against the tables of the program: findings, profile fields, exit codes, options.
import { describe, expect, test } from 'vitest';
import { EXIT_CODES } from '../../src/commands/exit-code.js';
import { watchLineSchema } from '../../src/intake/watch/watch-event.js';
import { FINDING_IDS } from '../../src/model/forecast-types.js';
import { COMMON_DEFAULTS, DISC_DEFAULTS } from '../../src/profile/profile-defaults.js';
import { parseProfile } from '../../src/profile/profile-file.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { FAILURE_CODES } from '../../src/report/failure.js';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { blocks, codeSpans, headings, prose, README, tableRows } from './markdown.js';

const rows = tableRows(README);

describe('findings', () => {
  const titles = headings(README)
    .filter(([level, text]) => level === 3 && text.startsWith('`'))
    .map(([, text]) => text.slice(1, -1));

  test('each has one heading, named by its id, and nothing else has', () => {
    expect(titles).toEqual([...FINDING_IDS]);
  });

  test.each(FINDING_IDS)('%s is told with its severity and a remedy', (id) => {
    const section = prose(README).split(`### \`${id}\`\n`)[1]?.split(/^#/m)[0] ?? '';
    expect(section).toMatch(/\b(fault|caution|note)\b/i);
    expect(section).toContain('**Remedy:**');
  });
});

test('the table of events of a watch has every one, and no other', () => {
  const section = prose(README).split('### A folder that is watched')[1]?.split(/^#/m)[0] ?? '';
  const shown = tableRows(section).flatMap(
    ([first = '']) => first.match(/(?<=`)[a-z-]+(?=`)/g) ?? [],
  );
  const types = watchLineSchema.options.flatMap(({ shape }) => [...shape.type.values]);
  expect(shown).toEqual(types);
});

describe('the profile', () => {
  test.each(defaultCells())('%s has one row, with its default %s', (field, cell) => {
    const found = rows.filter(([first]) => first === `\`${field}\``);
    expect(found.map(([, shown]) => shown)).toEqual([cell]);
  });

  test('no row names a field that does not exist', () => {
    const fields = new Set(defaultCells().map(([field]) => `\`${field}\``));
    const heads = rows.filter(([first, second]) => first === 'field' && second === 'default');
    expect(heads).toHaveLength(5);
    const shown = rows.filter((cells) => cells.length === heads[0]?.length);
    const named = shown.map(([first = '']) => first).filter((first) => first.startsWith('`'));
    expect(named).toHaveLength(fields.size);
    expect(named.filter((first) => !fields.has(first))).toEqual([]);
  });

  test('the example can be read, and says what it seems to', () => {
    const [text = ''] = blocks(README, 'jsonc');
    const settings = resolveProfile({ file: parseProfile('example', text) });
    expect(settings).toMatchObject({ rpm: 33.29, executesIsSet: true, machine: { gain: 1.1 } });
    expect(settings.pitchMax).toBeWithin(400e-6, 1e-12);
  });
});

test('the table of exit codes has those that the help tells', () => {
  const told = [...EXIT_CODES.matchAll(/^ +(\d+) /gm)].map(([, code]) => code);
  const shown = rows.flatMap(([first = '']) => /^`(\d+)`$/.exec(first)?.[1] ?? []);
  expect(shown).toEqual(told);
});

test('the table of failures has every code, once and in order, and no other', () => {
  const section = prose(README).split('one of these codes:')[1]?.split(/^#/m)[0] ?? '';
  const shown = tableRows(section).flatMap(([first = '']) => codeSpans(first));
  expect(shown).toEqual([...FAILURE_CODES]);
});

describe('options', async () => {
  const [forecast, ...others] = await Promise.all(
    ['forecast', 'side', 'fit', 'intake', 'accept', 'profile', 'completion', 'schema'].map(
      optionsOf,
    ),
  );
  const known = new Set([forecast ?? [], ...others].flat());

  test('every option that is named exists', () => {
    const texts = [...codeSpans(README), ...blocks(README, 'sh')].filter(
      (text) => !/npm/.test(text),
    );
    const named = texts.flatMap((text) => text.match(/--[a-z][a-z-]*/g) ?? []);
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((option) => !known.has(option))).toEqual([]);
  });

  test('the table of options has every one of forecast, and no other', () => {
    const section = prose(README).split('## All options')[1]?.split(/^#/m)[0] ?? '';
    const shown = tableRows(section).flatMap(
      ([first = '']) => first.match(/--[a-z][a-z-]*/g) ?? [],
    );
    expect(new Set(shown)).toEqual(new Set(forecast?.filter((option) => option !== '--help')));
  });

  test('every option of any command is named', () => {
    expect([...known].filter((option) => !codeSpans(README).join(' ').includes(option))).toEqual(
      [],
    );
  });
});

async function optionsOf(command: string): Promise<string[]> {
  const { stdout } = await runFurrow([command, '--help']);
  return stdout.match(/(?<=^ +(?:-\w, )?)--[a-z][a-z-]*/gm) ?? [];
}

test('every field of a side in the JSON has its row, and no row has another', () => {
  const section =
    prose(README).split('The fields of a side;')[1]?.split('`furrow schema`')[0] ?? '';
  const shown = tableRows(section).flatMap(([first = '']) => first.match(/\w+/g) ?? []);
  expect(shown.filter((field) => field !== 'field')).toEqual(shown.slice(1));
  expect(new Set(shown.slice(1))).toEqual(new Set(Object.keys(sideSchema.shape)));
  for (const field of Object.keys(forecastSchema.shape)) expect(section).toContain(`\`${field}\``);
});

/** Each field with its default as a cell shows it; those of a disc for 12, 10 and 7 inches. */
function defaultCells(): [field: string, cell: string][] {
  const { machine, ...common } = COMMON_DEFAULTS;
  const discs = [DISC_DEFAULTS[12], DISC_DEFAULTS[10], DISC_DEFAULTS[7]];
  const disc = Object.keys(DISC_DEFAULTS[12]).map((field): [string, string] => {
    const values = discs.map((of) => Object.entries(of).find(([name]) => name === field)?.[1]);
    return [field, values.map(code).join(' / ')];
  });
  const plain = (prefix: string, of: object) =>
    Object.entries(of).map(([field, value]): [string, string] => [prefix + field, code(value)]);
  return [...disc, ...plain('', common), ...plain('machine.', machine)];
}

function code(value: unknown): string {
  return `\`${String(value)}\``;
}
