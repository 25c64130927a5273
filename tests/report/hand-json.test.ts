import { expect, test } from 'vitest';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { handToJson } from '../../src/report/hand-json.js';
import { handSchema } from '../../src/report/hand-schema.js';

const TRACKS = [
  { name: 'invented 1', fromSeconds: 0, untilSeconds: 60 },
  {
    name: 'invented 2',
    fromSeconds: 62,
    untilSeconds: 100,
    trim: { gainDb: -1.25, fadeInSeconds: 0, fadeOutSeconds: 4 },
  },
];

test('what is set by hand has the trims and fades of the tracks that the sheet changes', () => {
  const hand = handSchema.parse(handToJson({ ...NOTHING_BY_HAND, tracks: TRACKS }));
  expect(hand.trims).toEqual([
    { fromSeconds: 62, untilSeconds: 100, gainDb: -1.25, fadeInSeconds: 0, fadeOutSeconds: 4 },
  ]);
});

test('without trims it is as it was', () => {
  const hand = handToJson({ ...NOTHING_BY_HAND, tracks: TRACKS.slice(0, 1) });
  expect(handSchema.parse(hand)).toEqual({ basePitch: [], baseWidth: [], bands: [] });
});
