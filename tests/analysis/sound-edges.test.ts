import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withSound } from '../../src/analysis/open-sound.js';
import type { SoundEdges } from '../../src/analysis/silent-ends.js';
import { readSoundEdges } from '../../src/analysis/sound-edges.js';
import { soundPath } from '../support/read-sound.js';
import { wavBytes } from '../support/wav-writer.js';

const RATE = 48_000;
const LEAST = 10 ** (-60 / 20);

/** A stereo file in which the frames named are at full scale and all others one step over zero. */
async function edgesOf(frames: number, loud: readonly number[]): Promise<SoundEdges | null> {
  const words = new Int16Array(2 * frames).fill(1);
  for (const [at, frame] of loud.entries()) words[2 * frame + (at % 2)] = -32_768;
  const path = await soundPath(wavBytes({ words, channels: 2, sampleRate: RATE }), 'side.wav');
  return await withSound(path, async ({ source }) => await readSoundEdges(source, LEAST));
}

describe('the silent ends of a program', () => {
  test('reach to the first and last frame of which one channel is loud enough, wherever they lie', async () => {
    const place = fc.integer({ min: 0, max: 199_999 });
    await fc.assert(
      fc.asyncProperty(fc.array(place, { minLength: 1, maxLength: 4 }), async (loud) => {
        const [first, last] = [Math.min(...loud), Math.max(...loud)];
        expect(await edgesOf(200_000, loud)).toEqual({
          headSeconds: first / RATE,
          tailSeconds: (199_999 - last) / RATE,
        });
      }),
      { numRuns: 20 },
    );
  });

  test.each([65_535, 65_536, 65_537])(
    'are found beside the end of a block, frame %i',
    async (at) => {
      const [head, tail] = [at / RATE, (140_000 - 1 - at) / RATE];
      expect(await edgesOf(140_000, [at])).toEqual({ headSeconds: head, tailSeconds: tail });
      expect((await edgesOf(140_000, [140_000 - 1 - at]))?.tailSeconds).toBe(at / RATE);
    },
  );

  test('are not told where no frame is loud enough', async () => {
    expect(await edgesOf(70_000, [])).toBe(null);
  });
});
