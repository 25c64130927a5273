import { expect, test } from 'vitest';
import { asciiText } from '../../src/report/ascii-text.js';
import { takesUnicode } from '../../src/report/takes-unicode.js';

// Which variable decides: POSIX.1-2017, Base Definitions, 8.2: LC_ALL, then LC_CTYPE, then LANG, each
// only if set and not empty; with none the C locale.
test.each([
  [{}, false],
  [{ LANG: 'C' }, false],
  [{ LANG: 'C.UTF-8' }, true],
  [{ LANG: 'de_DE.utf8' }, true],
  [{ LANG: 'de_DE.ISO-8859-1' }, false],
  [{ LANG: 'C.UTF-8', LC_CTYPE: 'POSIX' }, false],
  [{ LANG: 'POSIX', LC_CTYPE: 'en_GB.UTF-8' }, true],
  [{ LANG: 'C.UTF-8', LC_ALL: 'C' }, false],
  [{ LANG: 'C.UTF-8', LC_ALL: '' }, true],
  [{ LANG: 'C.UTF-8', TERM: 'linux' }, false],
  [{ LANG: 'C.UTF-8', TERM: 'dumb' }, false],
  [{ LANG: 'C.UTF-8', TERM: 'xterm-256color' }, true],
  [{ OS: 'Windows_NT' }, true],
  [{ OS: 'Windows_NT', LANG: 'C' }, false],
])('%j: %s', (environment, takes) => {
  expect(takesUnicode(environment)).toBe(takes);
});

test('in ASCII the signs of the words keep their width, so that tables stay straight', () => {
  const row = '12.7 µm  ±4.0 µm  – 3 m/s²';
  expect(asciiText(row)).toBe('12.7 um   4.0 um  - 3 m/s2');
  expect(asciiText('holds to ±0.14 % speed, ±4.0 µm depth')).toBe(
    'holds to +/-0.14 % speed, +/-4.0 um depth',
  );
});
