import { expect, test } from 'vitest';
import { headLoadText } from '../../src/report/head-load-text.js';

const left = { oneSecond: 2_134_567.8, tenSeconds: 987_654.3, limitRatio: null };
const right = { oneSecond: 1_900_000, tenSeconds: 0, limitRatio: null };

test('the head load names both windows, both channels, the unit and whose the limit is', () => {
  expect(headLoadText({ left, right })).toBe(
    "Head load L 1461, R 1378 m/s² rms over 1 s; L 994, R 0.0 over 10 s; its limit is its maker's.",
  );
});

test('with a limit in the profile it is told how many times that is reached', () => {
  const text = headLoadText({
    left: { ...left, limitRatio: 0.534 },
    right: { ...right, limitRatio: 1.2 },
  });
  expect(text).toContain('over 10 s; 0.53 and 1.20 times the mean square of headLimit; its');
  expect(text).toContain("its limit is its maker's.");
});
