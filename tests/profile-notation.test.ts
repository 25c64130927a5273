import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseProfile, readProfile } from '../src/profile/profile-file.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import { settingsToJson } from '../src/profile/settings-to-json.js';

const resolved = (text: string) => resolveProfile({ file: parseProfile('house.json', text) });

describe('written settings', () => {
  const lengths = fc.double({ min: 26e-6, max: 100e-6, noNaN: true });

  test('are a profile that resolves to the same settings to 1e-9 of each number', () => {
    fc.assert(
      fc.property(
        fc.record({
          rpm: fc.double({ min: 30, max: 80, noNaN: true }),
          referenceDbfs: fc.double({ min: -20, max: 0, noNaN: true }),
          speedTolerance: fc.double({ min: 0, max: 0.05, noNaN: true }),
          disc: fc.constantFrom(12, 10, 7),
          baseWidth: lengths.map((value) => `${value * 1e6}um`),
          basePitch: lengths.map((value) => `${0.0254 / value}lpi`),
          landMin: lengths.map((value) => `${value / 25.4e-6}mil`),
          pitchStep: fc.option(lengths.map((value) => `${value * 1e3}mm`)),
          ellipticalHz: fc.option(fc.integer({ min: 20, max: 300 })),
          headLimit: fc.option(fc.double({ min: 1, max: 1e9, noNaN: true })),
          depthMeter: fc.option(
            fc.constant([
              { reading: -3, width: '1.1mil' },
              { reading: 40, width: '2.2mil' },
            ]),
          ),
          executes: fc.constantFrom('machine', 'plan', 'fixed'),
          machine: fc.record({ gain: fc.double({ min: 0, max: 2, noNaN: true }) }),
        }),
        (fields) => {
          const settings = resolved(JSON.stringify(fields));
          const again = resolved(JSON.stringify(settingsToJson(settings)));
          const [before, after] = [flat(settings), flat(again)];
          expect([...after.keys()]).toEqual([...before.keys()]);
          for (const [name, value] of before) {
            const same = after.get(name);
            if (typeof value === 'number' && typeof same === 'number') {
              expect(same).toBeWithin(value, 0, 1e-9);
            } else {
              expect(same).toBe(value);
            }
          }
        },
      ),
      { numRuns: 50 },
    );
  });

  test('hold every field and nothing that is not one', () => {
    const json = settingsToJson(resolveProfile());
    expect(resolved(JSON.stringify(json))).toMatchObject({ disc: 12, executesIsSet: true });
    expect(Object.keys(json)).toHaveLength(50);
    expect(json).toMatchObject({ startDiameter: '292.1mm', landMin: '12.7um', ellipticalHz: null });
  });
});

/** Every number, text and null in a value, by its path. */
function flat(value: unknown, path = ''): Map<string, unknown> {
  if (typeof value !== 'object' || value === null) return new Map([[path, value]]);
  return new Map(Object.entries(value).flatMap(([key, at]) => [...flat(at, `${path}.${key}`)]));
}

test('the example of a profile is one', async () => {
  const file = await readProfile('examples/furrow.profile.json');
  expect(resolveProfile({ file })).toMatchObject({ disc: 7, executes: 'machine' });
});
