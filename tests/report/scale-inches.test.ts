import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ruleText } from '../../src/report/scale-inches.js';
import { INCH } from '../../src/units.js';

// 11½, 4¾ and 4¼ inches are diameters of discs (RIAA, from a secondary text); the rest is
// arithmetic: an inch is 25.4 mm, exactly.
test.each([
  [0.2921, '11 1/2'],
  [0.12065, '4 3/4'],
  [0.10795, '4 1/4'],
  [0.254, '10'],
  [0.0254 / 64, '1/64'],
  [0.0254 * (9 + 7 / 64), '9 7/64'],
  [0.0254 * (9 + 63.6 / 64), '10'],
  [0.0254 * (9 + 63.4 / 64), '9 63/64'],
  [0.0254 * (5 + 32.49 / 64), '5 1/2'],
  [0, ''],
  [-0.03, ''],
])('%s m is %s on a rule', (diameter, text) => {
  expect(ruleText(diameter)).toBe(text);
});

test('what is read off the rule is within 1/128 inch, and cannot be reduced further', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 0.32, noNaN: true }), (diameter) => {
      const [, whole = '0', above = '0', below = '1'] =
        /^(\d+)?(?: ?(\d+)\/(\d+))?$/.exec(ruleText(diameter).replace(/^(\d+\/)/, ' $1')) ?? [];
      const inches = Number(whole) + Number(above) / Number(below);
      expect(inches * INCH).toBeWithin(diameter, INCH / 128 + 1e-12);
      expect(above === '0' || Number(above) % 2 === 1).toBe(true);
      expect(64 % Number(below)).toBe(0);
    }),
  );
});
