import { describe, expect, test } from 'vitest';
import { BEXT, copied, count, point, WANTED, WORDS, withoutNames } from '../../support/cue-copy.js';
import { readForm } from '../../support/riff-chunks.js';
import {
  ascii,
  chunk,
  formatChunk,
  joined,
  longSizesChunk,
  riff,
  wavBytes,
} from '../../support/wav-writer.js';

describe('sizes become those of what is there', () => {
  const sound = wavBytes({ words: WORDS });
  const data = Buffer.from(sound).subarray(44);
  const OPEN = 0xffffffff;

  test.each([
    ['a size left open', riff([formatChunk(), chunk('data', data, OPEN)])],
    ['a size of zero', riff([formatChunk(), chunk('data', data, 0)])],
    ['more promised than there is', riff([formatChunk(), chunk('data', data, 5000)])],
    ['a form of another size', withSize(sound, 12)],
    ['a form of no size', withSize(sound, 0)],
    ['an open RF64', riff([longSizesChunk(0n), formatChunk(), chunk('data', data, OPEN)], 'RF64')],
    [
      'RF64 of 2^63',
      riff([longSizesChunk(2n ** 63n), formatChunk(), chunk('data', data, OPEN)], 'RF64'),
    ],
  ])('%s', async (_, bytes) => {
    const form = readForm(await copied(bytes));
    const found = form.chunks.filter(({ id }) => id === 'data');
    expect(found.map(({ content }) => content)).toEqual([data]);
    expect(withoutNames(form)).toEqual(WANTED);
  });

  test('a cut last frame stays, and so does a cut last chunk', async () => {
    const cut = riff([formatChunk(), chunk('data', data.subarray(0, 397), 400)]).subarray(0, -1);
    const [, found] = readForm(await copied(cut)).chunks;
    expect(found?.content).toEqual(data.subarray(0, 397));

    const list = joined([sound, BEXT]).subarray(0, -300);
    const chunks = readForm(await copied(withSize(list, 0))).chunks;
    expect(chunks.map(({ id, content }) => [id, content.length])).toEqual([
      ['fmt ', 16],
      ['data', 400],
      ['bext', 304],
      ['cue ', 52],
      ['LIST', 4 + 24 + 20 + 28 + 40],
    ]);
  });

  test('what is no chunk stays behind the form', async () => {
    const tag = ascii(`TAGS${'invented '.repeat(13)}`);
    for (const after of [tag, new Uint8Array(999), Uint8Array.of(9)]) {
      const form = readForm(await copied(joined([sound, after])));
      expect(form.after).toEqual(Buffer.from(after));
      expect(form.chunks.map(({ id }) => id)).toEqual(['fmt ', 'data', 'cue ', 'LIST']);
    }
  });

  test.each([
    ['more points than the chunk holds', chunk('cue ', joined([count(200), point(9, 5)])), 1],
    ['an empty chunk of points', chunk('cue ', new Uint8Array(0)), 0],
    ['half a number of points', chunk('cue ', Uint8Array.of(1)), 0],
    ['a text that is longer than its list', textList(chunk('labl', count(9), 4000)), 0],
    ['a text without a name', textList(chunk('labl', new Uint8Array(0))), 0],
    ['half a text', textList(Uint8Array.of(1, 2, 3)), 0],
  ])('marks that lie: %s', async (_, lie, points) => {
    const form = readForm(await copied(wavBytes({ words: WORDS, first: [lie] })));
    const own = withoutNames({ ...form, chunks: form.chunks.filter(({ id }) => id !== 'LIST') });
    expect(own.map(({ frame }) => frame)).toEqual(points === 1 ? [5, 0, 70] : [0, 70]);
  });
});

function textList(texts: Uint8Array): Uint8Array {
  return chunk('LIST', joined([ascii('adtl'), texts]));
}

function withSize(bytes: Uint8Array, size: number): Uint8Array {
  const copy = Uint8Array.from(bytes);
  new DataView(copy.buffer).setUint32(4, size, true);
  return copy;
}
