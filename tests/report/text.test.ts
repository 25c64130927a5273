import { stripVTControlCharacters } from 'node:util';
import { describe, expect, test } from 'vitest';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { colourLevel } from '../../src/report/colour.js';
import { largeLengthText, lengthText, levelText, lpiText } from '../../src/report/length-text.js';
import { placeText, timeText } from '../../src/report/place-text.js';
import { wrapText } from '../../src/report/wrap-text.js';

test.each([
  [0, '00:00.0'],
  [59.96, '01:00.0'],
  [119.949, '01:59.9'],
  [1200, '20:00.0'],
  [6000, '100:00.0'],
  [-0.9, '-00:00.9'],
  [-0.01, '00:00.0'],
])('%s s is %s', (seconds, text) => {
  expect(timeText(seconds)).toBe(text);
});

test('turns count from 0; one that begins now is the one told', () => {
  const settings = resolveProfile();
  expect(placeText(1.7999999999, settings)).toBe('00:01.8, turn 1');
  expect(placeText(1.7, settings)).toBe('00:01.7, turn 0');
  expect(placeText(-0.9, settings)).toBe('-00:00.9, before the program');
});

test.each([
  [lengthText(25.4e-6, 'metric'), '25.4 µm'],
  [lengthText(25.4e-6, 'us'), '1.00 mil'],
  [lengthText(-0.01e-6, 'metric'), '0.0 µm'],
  [largeLengthText(0.12065, 'us'), '4.750 in'],
  [largeLengthText(0.12065, 'metric'), '120.7 mm'],
  [lpiText(0.0254 / 300), '300 LPI'],
  [lpiText(0.0254 / 246.2), '246.2 LPI'],
  [levelText(1.5), '+1.5 dB'],
  [levelText(-1.5), '-1.5 dB'],
  [levelText(-0.01), '0.0 dB'],
  [levelText(0.01), '0.0 dB'],
])('a reader sees %s', (text, expected) => {
  expect(text).toBe(expected);
});

describe('wrapping', () => {
  const text = 'land 12.7 µm '.repeat(30).trim();

  test('no line is over 80 columns, no word is lost, no unit is parted from its number', () => {
    const lines = wrapText(text, '  ', '    ').split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(lines.map((line) => line.trim()).join(' ')).toBe(text);
    expect(lines.filter((line) => /^ *µm/.test(line))).toEqual([]);
  });

  test('colours take no room', () => {
    const painted = wrapText(text.replaceAll('land', '\u001b[31mland\u001b[39m'), '  ', '    ');
    expect(stripVTControlCharacters(painted)).toBe(wrapText(text, '  ', '    '));
  });

  test('a word longer than a line stays whole', () => {
    const word = 'x'.repeat(200);
    expect(wrapText(`a ${word} b`, '', '  ')).toBe(`a\n  ${word}\n  b`);
  });
});

describe('colour', () => {
  test.each([
    [{}, true, 1],
    [{}, false, 0],
    [{ NO_COLOR: '1' }, true, 0],
    [{ NO_COLOR: '' }, true, 1],
    [{ TERM: 'dumb' }, true, 0],
    [{ FORCE_COLOR: '1' }, false, 1],
    [{ FORCE_COLOR: '' }, false, 1],
    [{ FORCE_COLOR: '0' }, true, 0],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, false, 1],
  ])('%j, terminal %s: %s', (environment, isTerminal, level) => {
    expect(colourLevel({ environment, isTerminal })).toBe(level);
  });
});
