import fc from 'fast-check';
import { expect, test } from 'vitest';
import { safeText } from '../../src/report/safe-text.js';

test.each([
  { what: 'a colour', text: 'a\x1b[31mb\x1b[0m', shown: 'a\\u{1b}[31mb\\u{1b}[0m' },
  { what: 'a screen clear', text: '\x1b[2J\x1b[Hside', shown: '\\u{1b}[2J\\u{1b}[Hside' },
  { what: 'a window title', text: '\x1b]0;title\x07side', shown: '\\u{1b}]0;title\\u{7}side' },
  { what: 'a sequence of one byte', text: '\x9b31mx', shown: '\\u{9b}31mx' },
  { what: 'what looks like a sequence', text: '\x1b]side.wav', shown: '\\u{1b}]side.wav' },
  { what: 'a line break', text: 'a\nb\rc', shown: 'a\\u{a}b\\u{d}c' },
  { what: 'a bell, a null, a delete', text: '\x07\0\x7f', shown: '\\u{7}\\u{0}\\u{7f}' },
  { what: 'a reversal of direction', text: 'a\u202egnp.wav', shown: 'a\\u{202e}gnp.wav' },
  { what: 'an isolate', text: '\u2066x\u2069', shown: '\\u{2066}x\\u{2069}' },
  { what: 'line and paragraph separators', text: '\u2028\u2029', shown: '\\u{2028}\\u{2029}' },
  { what: 'half a surrogate', text: 'a\ud800b\udc00', shown: 'a\\u{d800}b\\u{dc00}' },
])('$what cannot act on a terminal', ({ text, shown }) => {
  expect(safeText(text)).toBe(shown);
});

test('names in any script, with accents, emoji and spaces, stay as they are', () => {
  for (const name of ['Seite A – Überspielung.wav', '溝 01.wav', 'شريط.wav', '💿 e\u0301.wav']) {
    expect(safeText(name)).toBe(name);
  }
});

test('nothing is left that moves the cursor or the direction, and a second pass changes nothing', () => {
  const hostile = fc.string({
    unit: fc.constantFrom('\x1b', '[', ']', '3', ';', 'm', '\x9b', '\x07', '\u202e', '\ud83d', 'a'),
  });
  fc.assert(
    fc.property(fc.oneof(hostile, fc.string({ unit: 'binary' })), (text) => {
      const safe = safeText(text);
      expect(safe).not.toMatch(/[\p{Cc}\p{Bidi_Control}\p{Cs}\u2028\u2029]/u);
      expect(safeText(safe)).toBe(safe);
    }),
    { numRuns: 500 },
  );
});
