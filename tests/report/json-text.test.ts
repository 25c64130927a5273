import { expect, test } from 'vitest';
import { jsonText } from '../../src/report/json-text.js';

const EVERY = String.fromCharCode(...Array.from({ length: 0x10000 }, (_, code) => code));

test('every character comes back as it was, and none that acts is written raw', () => {
  const text = jsonText({ name: EVERY });
  expect(JSON.parse(text)).toEqual({ name: EVERY });
  expect(text).not.toMatch(/[\p{Cc}\p{Bidi_Control}\u2028\u2029]/u);
});

test('what does not act stays readable', () => {
  expect(jsonText(['side a – größer 日本.wav', null, 1.5])).toBe(
    '["side a – größer 日本.wav",null,1.5]',
  );
  expect(jsonText({ a: [1] }, 2)).toBe('{\n  "a": [\n    1\n  ]\n}');
});
