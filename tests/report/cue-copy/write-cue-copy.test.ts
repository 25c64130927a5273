import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BEXT,
  copied,
  count,
  INFO,
  point,
  WANTED,
  WORDS,
  withoutNames,
} from '../../support/cue-copy.js';
import { type ReadForm, readCues, readForm } from '../../support/riff-chunks.js';
import { ascii, chunk, joined, wavBytes } from '../../support/wav-writer.js';

/** Chunks but for ds64 and marks, as text. */
function others({ chunks }: ReadForm): string[] {
  return chunks
    .filter(({ id, content }) => id !== 'ds64' && id !== 'cue ' && !isTextList(id, content))
    .map(({ id, content }) => `${id} ${content.toString('hex')}`);
}

function isTextList(id: string, content: Buffer): boolean {
  return id === 'LIST' && content.toString('latin1', 0, 4) === 'adtl';
}

const label = (name: number, text: string): Uint8Array =>
  chunk('labl', joined([count(name), ascii(`${text}\0`)]));
const IXML = chunk('iXML', ascii('<invented/>'));

describe.each(['RIFF', 'RF64', 'BW64'] as const)('%s', (container) => {
  test('keeps every other chunk byte for byte and in order, and its container', async () => {
    const original = wavBytes({
      container,
      words: WORDS.slice(0, 199),
      bitDepth: 8,
      channels: 1,
      first: [BEXT],
      between: [IXML, chunk('odd ', Uint8Array.of(1, 2, 3))],
      last: [INFO, chunk('data', Uint8Array.of(7))],
    });
    const form = readForm(await copied(original));
    expect(form.container).toBe(container);
    expect(form.chunks.map(({ id }) => id)).toEqual([
      ...(container === 'RIFF' ? [] : ['ds64']),
      'bext',
      'fmt ',
      'iXML',
      'odd ',
      'data',
      'LIST',
      'data',
      'cue ',
      'LIST',
    ]);
    const plain = wavBytes({
      words: WORDS.slice(0, 199),
      bitDepth: 8,
      channels: 1,
      first: [BEXT],
      between: [IXML, chunk('odd ', Uint8Array.of(1, 2, 3))],
      last: [INFO, chunk('data', Uint8Array.of(7))],
    });
    expect(others(form)).toEqual(others(readForm(Buffer.from(plain))));
    expect(withoutNames(form)).toEqual(WANTED);
  });

  test('adds to the marks that are there, under names that are free', async () => {
    const cues = chunk('cue ', joined([count(2), point(2, 5), point(1, 50)]));
    const texts = joined([ascii('adtl'), label(2, 'Band 1'), chunk('note', joined([count(3)]))]);
    const form = readForm(
      await copied(
        wavBytes({ container, words: WORDS, first: [cues], last: [chunk('LIST', texts), INFO] }),
      ),
    );
    expect(readCues(form)).toEqual([
      { name: 2, frame: 5, label: 'Band 1', length: 0, note: null },
      { name: 1, frame: 50, label: null, length: 0, note: null },
      { name: 4, ...WANTED[0] },
      { name: 5, ...WANTED[1] },
    ]);
  });
});

test('a copy of a copy keeps the marks of the first', async () => {
  const once = await copied(wavBytes({ words: WORDS }));
  const twice = readForm(await copied(once, [{ frame: 99, length: 1, label: 'x', note: 'y' }]));
  expect(withoutNames(twice)).toEqual([...WANTED, { frame: 99, length: 1, label: 'x', note: 'y' }]);
});

test('labels come before all other texts, for readers that stop at those', async () => {
  const form = readForm(await copied(await copied(wavBytes({ words: WORDS }))));
  const text = form.chunks.at(-1)?.content.toString('latin1') ?? '';
  expect(text.lastIndexOf('labl')).toBeGreaterThan(0);
  expect(text.indexOf('ltxt')).toBeGreaterThan(text.lastIndexOf('labl'));
  expect(text.indexOf('note')).toBeGreaterThan(text.lastIndexOf('labl'));
});

test('without marks nothing is added, and the copy is the file', async () => {
  const bytes = wavBytes({ words: WORDS, first: [BEXT], last: [INFO] });
  expect(await copied(bytes, [])).toEqual(Buffer.from(bytes));
});

test('any labels and notes give one sound form, whose texts are printable ASCII on one line', async () => {
  const text = fc.string({ unit: 'binary', maxLength: 40 });
  await fc.assert(
    fc.asyncProperty(fc.nat(99), text, text, async (frame, labelText, note) => {
      const mark = { frame, length: 0, label: labelText, note };
      const [cue] = readCues(readForm(await copied(wavBytes({ words: WORDS }), [mark])));
      expect(cue?.frame).toBe(frame);
      expect(`${cue?.label}${cue?.note ?? ''}`).toMatch(/^[\x20-\x7e]*$/);
    }),
    { numRuns: 60 },
  );
});

test.each([
  { frame: -1, length: 0 },
  { frame: 0.5, length: 0 },
  { frame: Number.NaN, length: 0 },
  { frame: 99, length: 2 },
  { frame: 101, length: 0 },
  { frame: 0, length: -1 },
])('a mark outside the file is a mistake of the caller: %o', async (place) => {
  const marks = [{ ...place, label: '', note: '' }];
  await expect(copied(wavBytes({ words: WORDS }), marks)).rejects.toThrow(RangeError);
});
