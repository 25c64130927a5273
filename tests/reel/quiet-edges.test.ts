import { expect, test } from 'vitest';
import { withSound } from '../../src/analysis/open-sound.js';
import { withQuietEdges } from '../../src/reel/quiet-edges.js';
import { writeWav } from '../support/sheet-side.js';
import { inBoth, tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const RATE = 48_000;

test.for([55, 61.7, 440])(
  'a passage cut out of %i Hz begins and ends at a crossing of zero, a hundredth further out at most',
  async (hz) => {
    const folder = await temporaryFolder();
    const format = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;
    const signal = tones([{ hz, amplitude: 0.8 }], 4 * RATE, RATE);
    const path = await writeWav(folder, 'tone.wav', inBoth(signal), format);
    await withSound(path, async ({ source }) => {
      // In the middle of a swing at both ends.
      const given = { fromSeconds: 60.25 / hz, untilSeconds: 120.25 / hz, seconds: [] };
      const { fromSeconds, untilSeconds } = await withQuietEdges(given, source);
      for (const frame of [Math.round(fromSeconds * RATE), Math.round(untilSeconds * RATE) - 1]) {
        // Half the step between two frames at the crossing, and what rounding to 24 bit leaves.
        const most = (0.8 * Math.PI * hz) / RATE + 2 ** -23;
        expect(Math.abs(signal[frame] ?? 1)).toBeLessThanOrEqual(most);
      }
      expect(given.fromSeconds - fromSeconds).toBeGreaterThan(0);
      expect(given.fromSeconds - fromSeconds).toBeLessThan(0.0101);
      expect(untilSeconds - given.untilSeconds).toBeGreaterThan(0);
      expect(untilSeconds - given.untilSeconds).toBeLessThan(0.0101);
    });
  },
);

test('a passage of the whole program stays the whole program', async () => {
  const folder = await temporaryFolder();
  const format = { encoding: 'pcm', bitDepth: 16, channels: 1, sampleRate: RATE } as const;
  const signal = tones([{ hz: 100, amplitude: 0.5, phase: 1 }], RATE, RATE);
  const path = await writeWav(folder, 'tone.wav', inBoth(signal), format);
  await withSound(path, async ({ source }) => {
    const whole = { fromSeconds: 0, untilSeconds: 1, seconds: [] };
    expect(await withQuietEdges(whole, source)).toEqual(whole);
  });
});
