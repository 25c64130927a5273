import { describe, expect, test } from 'vitest';
import { allowedText } from '../src/profile/allowed-text.js';
import { parseProfile } from '../src/profile/profile-file.js';
import { areDefaults, profileValues } from '../src/profile/profile-values.js';

const valuesOf = (text: string, flags = {}) =>
  profileValues({ file: parseProfile('house.json', text), flags });
const theValue = (field: string, text: string, flags = {}) =>
  valuesOf(text, flags).find((value) => value.field === field);

describe('a value tells where it comes from', () => {
  test.each([
    ['basePitch', '{}', {}, { value: '300lpi', isDefault: true, origin: { from: 'default' } }],
    [
      'basePitch',
      '{\n"basePitch": "280lpi"}',
      {},
      { value: '280lpi', isDefault: false, origin: { from: 'file', line: 2 } },
    ],
    [
      'basePitch',
      '{"basePitch": "280lpi"}',
      { basePitch: '90um' },
      { value: '90um', isDefault: false, origin: { from: 'option', option: '--pitch' } },
    ],
    [
      'ellipticalHz',
      '{"ellipticalHz": 150}',
      { ellipticalHz: null },
      { value: null, isDefault: true, origin: { from: 'option', option: '--elliptical' } },
    ],
    ['rpm', '{"disc": 7}', {}, { value: 45, isDefault: true, origin: { from: 'disc', disc: 7 } }],
    ['rpm', '{"disc": 7, "rpm": 33}', {}, { isDefault: false, origin: { from: 'file', line: 1 } }],
    ['disc', '{}', {}, { value: 12, isDefault: true, origin: { from: 'default' } }],
    ['disc', '{"disc": 7}', {}, { value: 7, isDefault: false, origin: { from: 'file', line: 1 } }],
    [
      'machine.gain',
      '{"machine": {\n"gain": 1.2}}',
      {},
      { value: 1.2, isDefault: false, origin: { from: 'file', line: 2 } },
    ],
    [
      'machine.holdTurns',
      '{"machine": {"gain": 1.2}}',
      {},
      { value: 1, isDefault: true, origin: { from: 'default' } },
    ],
  ])('%s in %j with %j', (field, text, flags, expected) => {
    expect(theValue(field, text, flags)).toMatchObject({ field, ...expected });
  });

  test('in the notation that it was written in, and the default in any unit', () => {
    expect(theValue('landMin', '{"landMin": "12.7um"}')).toMatchObject({
      value: '12.7um',
      isDefault: true,
    });
    expect(theValue('landMin', '{"landMin": "12.71um"}')).toMatchObject({ isDefault: false });
  });
});

describe('nothing but defaults', () => {
  test.each([
    [true, '{}'],
    [true, '{"disc": 7, "rpm": 33.29}'],
    [true, '{"landMin": "12.7um", "machine": {"gain": 1}}'],
    [false, '{"landMin": "13um"}'],
    [false, '{"machine": {"gain": 1.1}}'],
    [false, '{"executes": "machine"}'],
  ])('%j of %s', (expected, text) => {
    expect(areDefaults(valuesOf(text))).toBe(expected);
  });
});

test.each([
  ['disc', 'one of 12, 10, 7'],
  ['rpm', 'a number from 10 to 100'],
  ['ellipticalHz', 'a number from 10 to 2000, or null'],
  [
    'machine.openSlew',
    'a length with its unit (um, mm, mil, in), such as "50.8um" or "2mil", or null',
  ],
])('%s may hold %s', (field, expected) => {
  expect(allowedText(field)).toBe(expected);
});
