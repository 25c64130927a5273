import fc from 'fast-check';
import type { HandSettings } from '../../src/model/side-plan-input.js';

/** Within which random programs lie, s. */
const LONGEST = 9;

/** Not doubles, most of which would be next to nothing. */
const time = fc.integer({ min: 0, max: 100 * LONGEST }).map((hundredths) => hundredths / 100);

/** Base pitches of 60 to 160 µm and base widths of 40 to 90 µm from random times on. */
export const randomHand: fc.Arbitrary<HandSettings> = fc.record({
  basePitch: steps((fromSeconds, share) => ({ fromSeconds, pitch: 60e-6 + 100e-6 * share })),
  baseWidth: steps((fromSeconds, share) => ({ fromSeconds, width: 40e-6 + 50e-6 * share })),
  bands: fc.constant([]),
  tracks: fc.constant([]),
});

function steps<Step extends { readonly fromSeconds: number }>(
  step: (fromSeconds: number, share: number) => Step,
): fc.Arbitrary<Step[]> {
  const one = fc.tuple(
    time,
    fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100),
  );
  return fc
    .array(one, { maxLength: 4 })
    .map((list) =>
      list
        .map(([fromSeconds, share]) => step(fromSeconds, share))
        .sort((before, after) => before.fromSeconds - after.fromSeconds),
    );
}
