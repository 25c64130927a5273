import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { clustersOf, columnsOf, textOf } from '../../src/report/folder-clusters.js';
import { folderLabels } from '../../src/report/folder-labels.js';
import { shortenNames } from '../../src/report/folder-shorten.js';

const shown = (name: string) => textOf(clustersOf(name));

describe('a name on a terminal', () => {
  // Widths: Unicode Standard Annex 11; emoji of one cluster two columns, as most terminals draw them.
  test.each([
    ['side-a.wav', 'side-a.wav', 10],
    ['日本.wav', '日本.wav', 8],
    ['가각한', '가각한', 6],
    ['e\u0301te', 'e\u0301te', 3],
    ['👨‍👩‍👧', '👨‍👩‍👧', 2],
    ['🇩🇪', '🇩🇪', 2],
    ['1\ufe0f\u20e3', '1\ufe0f\u20e3', 2],
    ['a\u001b[2Jb', 'a\\u{1b}[2Jb', 11],
    ['a\nb\tc', 'a\\u{a}b\\u{9}c', 13],
    ['a\u202egnp', 'a\\u{202e}gnp', 12],
    ['a\u2028b', 'a\\u{2028}b', 10],
    ['a\u200bb', 'a\\u{200b}b', 10],
    ['\ufeffa', '\\u{feff}a', 9],
    ['so\u00adft', 'so\\u{ad}ft', 10],
    ['a\u200d', 'a\\u{200d}', 9],
    ['\u0301a', '\\u{301}a', 8],
    ['\u3164', '\\u{3164}', 8],
    ['\ud800', '\\u{d800}', 8],
  ])('%j is shown as %s in %d columns', (name, text, columns) => {
    expect(shown(name)).toBe(text);
    expect(columnsOf(clustersOf(name))).toBe(columns);
    expect(stringWidth(text)).toBe(columns);
  });
});

describe('names that are too long', () => {
  const cut = (names: string[], columns = 16) => shortenNames(names, columns, '…');

  test('lose their middle and keep their extension', () => {
    expect(cut(['the-quiet-overture-final.wav'])).toEqual(['the-qui…inal.wav']);
    expect(cut(['short.wav'])).toEqual(['short.wav']);
  });

  test.each([
    ['at the end', 'a-long-album-title-side-', '.wav'],
    ['at the beginning', '', '-of-a-long-album-title-24bit-96k.wav'],
    ['inside', 'a-long-album-title-side-', '-remastered-24bit-96k.wav'],
    ['near the beginning', 'disc-', '-of-a-long-album-title-24bit-96k.wav'],
  ])('are told apart by what differs %s', (_, before, after) => {
    const names = Array.from({ length: 12 }, (__, side) => `${before}${side + 10}${after}`);
    const labels = cut(names);
    expect(new Set(labels).size).toBe(12);
    for (const [side, label] of labels.entries()) {
      expect(label).toContain(String(side + 10));
      expect(label).toMatch(/\.wav$/);
      expect(stringWidth(label)).toBeLessThanOrEqual(16);
    }
  });

  test('that differ at two places far inside are parted step by step', () => {
    const names = ['x', 'y'].flatMap((one) =>
      ['p', 'q'].map(
        (two) => `${'a'.repeat(30)}${one}${'b'.repeat(30)}${two}${'c'.repeat(30)}.wav`,
      ),
    );
    expect(new Set(cut(names)).size).toBe(4);
  });

  // In words of another name it may be told in part; in place of a character it is that or nothing.
  test.each(['\u202e', '\u200b', '\u001b', '\r\n'])(
    'are never cut inside of what stands for %j',
    (character) => {
      const name = `09-ev${character}gnp-of-a-long-title.wav`;
      const whole = /\\u\{[0-9a-f]+\}/g;
      for (let columns = 10; columns < 40; columns++) {
        const [label = ''] = cut([name], columns);
        expect(label.replaceAll(whole, '')).not.toMatch(/[\\{}]/);
        expect(stringWidth(label)).toBeLessThanOrEqual(columns);
      }
    },
  );

  test('have no extension that could act on the terminal', () => {
    const names = ['x', 'y'].map((each) => `${'a'.repeat(30)}${each}${'b'.repeat(30)}.\u001b[2J`);
    const labels = cut(names);
    expect(new Set(labels).size).toBe(2);
    expect(labels.join('')).not.toContain('\u001b');
  });

  test('fit whatever they hold, wide characters and joined ones included', () => {
    const part = fc.oneof(
      fc.constantFrom('日', '👨‍👩‍👧', 'e\u0301', '\u001b[31m', '\u200b', '.wav', ' ', '/'),
      fc.string({ unit: 'grapheme', maxLength: 4 }),
    );
    const name = fc.array(part, { maxLength: 30 }).map((parts) => `${parts.join('')}.wav`);
    fc.assert(
      fc.property(fc.uniqueArray(name, { maxLength: 6 }), (names) => {
        for (const [index, label] of cut(names).entries()) {
          expect(columnsOf(clustersOf(label))).toBeLessThanOrEqual(16);
          expect(label).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
          const whole = shown(names[index] ?? '');
          if (stringWidth(whole) <= 16) expect(label).toBe(whole);
          else expect(label).toMatch(/…/);
        }
      }),
    );
  });
});

describe('files of one name', () => {
  const named = (path: string) => ({ name: path.split('/').at(-1) ?? '', path });
  const labels = (paths: string[], columns = 40) => folderLabels(paths.map(named), columns, '…');

  test('are told by their folder', () => {
    expect(labels(['x/disc-1/a.wav', 'x/disc-2/a.wav', 'x/disc-2/b.wav'])).toEqual([
      'disc-1/a.wav',
      'disc-2/a.wav',
      'b.wav',
    ]);
  });

  test('are told by as many folders as it takes', () => {
    expect(labels(['k/1/cut/a.wav', 'k/2/cut/a.wav', 'a.wav'])).toEqual([
      '1/cut/a.wav',
      '2/cut/a.wav',
      'a.wav',
    ]);
  });

  test('that are the same file twice keep their name', () => {
    expect(labels(['x/a.wav', 'x/a.wav'])).toEqual(['a.wav', 'a.wav']);
  });

  test('differ in what is left when even the folders are too long', () => {
    const short = labels(
      ['first-pressing-of-the-album/side-a.wav', 'third-pressing-of-the-album/side-a.wav'],
      16,
    );
    expect(new Set(short).size).toBe(2);
    expect(short.every((label) => label.endsWith('side-a'))).toBe(true);
  });

  test.each([
    [
      ['the-quiet-overture.wav', 'b.WAV'],
      ['the-quiet-overture', 'b'],
    ],
    [
      ['the-quiet-overture.wav', 'b.motion'],
      ['the-quie…rture.wav', 'b.motion'],
    ],
    [
      ['short.wav', 'b.wav'],
      ['short.wav', 'b.wav'],
    ],
  ])('%j lose an ending that all have, where there is no room for it', (names, expected) => {
    expect(labels(names, 18)).toEqual(expected);
  });
});

test('five thousand long names stay apart', () => {
  const names = Array.from({ length: 5000 }, (_, index) => `${'album '.repeat(9)}${index}.wav`);
  expect(new Set(shortenNames(names, 16, '~')).size).toBe(5000);
});
