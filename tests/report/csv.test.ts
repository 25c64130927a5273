import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cell, csvText } from '../../src/report/csv.js';
import { safeText } from '../../src/report/safe-text.js';

const COLUMNS = { one: (row: Cell[]) => row[0] ?? null, two: (row: Cell[]) => row[1] ?? null };

/** Read back by csv-parse of npm, which knows nothing of the writer. */
function readBack(text: string): string[][] {
  return parse(text, { record_delimiter: '\r\n' });
}

/** The one cell of a table that has no other. */
function cellOf(cell: Cell): string {
  return readBack(csvText({ cell: (row: Cell) => row }, [cell, 'last']))[1]?.[0] ?? 'missing';
}

describe('a table as CSV', () => {
  test('is what RFC 4180 says: names first, CR LF at the end of each line, quotes doubled', () => {
    const rows = [
      ['plain', 1.5],
      ['a,b', -2],
      ['say "so"', null],
    ];
    expect(csvText(COLUMNS, rows)).toBe('one,two\r\nplain,1.5\r\n"a,b",-2\r\n"say ""so""",\r\n');
  });

  test('has the names alone where there are no rows', () => {
    expect(csvText(COLUMNS, [])).toBe('one,two\r\n');
  });

  test('is read back by another program as it was given, but for what is made safe', () => {
    const cell = fc.oneof(
      fc.string({ unit: fc.constantFrom('a', '"', ',', ' ', "'", '.', '\u00b5', '\u6f22') }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constant(null),
    );
    const row = fc.array(cell, { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const read = readBack(csvText(COLUMNS, rows));
        const given = rows.map((cells) => cells.map((one) => (one === null ? '' : String(one))));
        expect(read).toEqual([['one', 'two'], ...given]);
      }),
    );
  });

  test('keeps every row in its columns, whatever a text holds', () => {
    const row = fc.array(fc.string({ unit: 'binary' }), { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const read = readBack(csvText(COLUMNS, rows));
        expect(read.map((cells) => cells.length)).toEqual([2, ...rows.map(() => 2)]);
      }),
    );
  });
});

describe('a cell', () => {
  test.each<[string, Cell, string]>([
    ['null is empty', null, ''],
    ['what is not a number is empty', Number.NaN, ''],
    ['infinity is empty', Number.NEGATIVE_INFINITY, ''],
    ['a negative number is no formula', -0.25, '-0.25'],
    ['a truth is a word', true, 'true'],
    ['a space at the end is kept', ' a ', ' a '],
    ['control characters are shown', 'a\u001b[2J\r\nb\tc', 'a\\u{1b}[2J\\u{d}\\u{a}b\\u{9}c'],
    ['the reading direction stays', 'a\u202eb', 'a\\u{202e}b'],
  ])('%s', (_, given, shown) => {
    expect(cellOf(given)).toBe(shown);
  });

  test.each([
    '=1+1',
    '+1',
    '-1',
    '@SUM(A1)',
    ' =1',
    '"=1',
    '\'"=1',
    '\u00a0=1',
    '\uff1d1',
    '\uff201',
  ])('that a spreadsheet would compute, %j, has an apostrophe in front', (formula) => {
    expect(cellOf(formula)).toBe(`'${formula}`);
  });

  test('that begins with a tab or a line break begins with what shows it', () => {
    expect(cellOf('\t=1')).toBe('\\u{9}=1');
    expect(cellOf('\r=1')).toBe('\\u{d}=1');
  });

  test('cannot begin a formula behind a semicolon, where spreadsheets split at those', () => {
    expect(cellOf('a;=1; @b')).toBe("a;'=1;' @b");
  });

  test('never begins a formula and never holds a control, whatever the text', () => {
    const hostile = fc.string({
      unit: fc.constantFrom(
        '=',
        '+',
        '-',
        '@',
        '\t',
        '\r',
        '\n',
        ' ',
        '"',
        "'",
        ';',
        'a',
        '\u001b',
      ),
    });
    fc.assert(
      fc.property(fc.oneof(hostile, fc.string({ unit: 'binary' })), (text) => {
        const shown = cellOf(text);
        for (const piece of shown.split(';'))
          expect(piece).not.toMatch(/^[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u);
        expect(shown).toBe(safeText(shown));
      }),
    );
  });
});
