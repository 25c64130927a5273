import { link, mkdir, readdir, readFile, symlink, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withWav } from '../../../src/analysis/wav-file.js';
import { UsageError } from '../../../src/errors.js';
import type { CueMark } from '../../../src/report/cue-copy/cue-mark.js';
import { writeCueCopy } from '../../../src/report/cue-copy/write-cue-copy.js';
import { type ReadForm, readCues, readForm } from '../../support/riff-chunks.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import {
  ascii,
  chunk,
  formatChunk,
  joined,
  longSizesChunk,
  riff,
  wavBytes,
} from '../../support/wav-writer.js';

const WORDS = Array.from({ length: 200 }, (_, word) => 100 * word - 9999);
const MARKS: readonly CueMark[] = [
  { frame: 70, length: 29, label: 'overcut', note: 'fault: Overcut at 00:00.0.' },
  { frame: 0, length: 0, label: 'land 4.8 µm', note: '' },
];
const WANTED = [
  { frame: 0, length: 0, label: 'land 4.8 um', note: null },
  { frame: 70, length: 29, label: 'overcut', note: 'fault: Overcut at 00:00.0.' },
];

/** The copy of a file of these bytes. */
async function copied(bytes: Uint8Array, marks = MARKS): Promise<Buffer> {
  const folder = await temporaryFolder();
  const path = join(folder, 'side.wav');
  await writeFile(path, bytes);
  await withWav(path, (wav) => writeCueCopy(wav, join(folder, 'copy.wav'), marks));
  expect(await readFile(path)).toEqual(Buffer.from(bytes));
  expect(await readdir(folder)).toEqual(['copy.wav', 'side.wav']);
  return await readFile(join(folder, 'copy.wav'));
}

function withoutNames(form: ReadForm) {
  return readCues(form).map(({ frame, length, label, note }) => ({ frame, length, label, note }));
}

/** Chunks but for ds64 and marks, as text. */
function others({ chunks }: ReadForm): string[] {
  return chunks
    .filter(({ id, content }) => id !== 'ds64' && id !== 'cue ' && !isTextList(id, content))
    .map(({ id, content }) => `${id} ${content.toString('hex')}`);
}

function isTextList(id: string, content: Buffer): boolean {
  return id === 'LIST' && content.toString('latin1', 0, 4) === 'adtl';
}

/** A cue point by the letter. */
function point(name: number, frame: number): Uint8Array {
  const bytes = Buffer.alloc(24);
  bytes.writeUInt32LE(name, 0);
  bytes.writeUInt32LE(frame, 4);
  bytes.write('data', 8);
  bytes.writeUInt32LE(frame, 20);
  return bytes;
}

const count = (value: number): Uint8Array => Uint8Array.of(value, 0, 0, 0);
const label = (name: number, text: string): Uint8Array =>
  chunk('labl', joined([count(name), ascii(`${text}\0`)]));
const BEXT = chunk(
  'bext',
  Uint8Array.from({ length: 603 }, (_, byte) => byte % 251),
);
const IXML = chunk('iXML', ascii('<invented/>'));
const INFO = chunk('LIST', joined([ascii('INFO'), chunk('IART', ascii('none\0'))]));

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

test('any labels and notes give one sound form, whose texts are printable ASCII on one line', async () => {
  const text = fc.string({ unit: 'binary', maxLength: 40 });
  await fc.assert(
    fc.asyncProperty(fc.nat(99), text, text, async (frame, labelText, note) => {
      const mark = { frame, length: 0, label: labelText, note };
      const [cue] = readCues(readForm(await copied(wavBytes({ words: WORDS }), [mark])));
      expect(cue?.frame).toBe(frame);
      expect(`${cue?.label}${cue?.note ?? ''}`).toMatch(/^[\x20-\x7e]*$/);
    }),
    { numRuns: 60, seed: 3 },
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

describe('never onto the original', () => {
  test.each([
    ['its own name', (folder: string) => join(folder, 'side.wav')],
    ['a detour', (folder: string) => join(folder, 'sub', '..', 'side.wav')],
    ['a link', (folder: string) => join(folder, 'link.wav')],
    ['another name of the same file', (folder: string) => join(folder, 'hard.wav')],
  ])('by %s', async (_, target) => {
    const folder = await temporaryFolder();
    const path = join(folder, 'side.wav');
    const bytes = wavBytes({ words: WORDS });
    await writeFile(path, bytes);
    await mkdir(join(folder, 'sub'));
    await symlink('side.wav', join(folder, 'link.wav'));
    await link(path, join(folder, 'hard.wav'));
    await withWav(path, async (wav) => {
      await expect(writeCueCopy(wav, target(folder), MARKS)).rejects.toThrow(UsageError);
    });
    expect(await readFile(path)).toEqual(Buffer.from(bytes));
  });

  test('but over an older copy, and over nothing that is not whole', async () => {
    const folder = await temporaryFolder();
    const [path, copy] = [join(folder, 'side.wav'), join(folder, 'copy.wav')];
    await writeFile(path, wavBytes({ words: WORDS, last: [BEXT] }));
    await writeFile(copy, 'older');
    await withWav(path, async (wav) => {
      await truncate(path, 500);
      await expect(writeCueCopy(wav, copy, MARKS)).rejects.toMatchObject({
        code: 'changed-while-read',
      });
    });
    expect(await readFile(copy, 'utf8')).toBe('older');
    expect((await readdir(folder)).sort()).toEqual(['copy.wav', 'side.wav']);
    await withWav(path, (wav) => writeCueCopy(wav, copy, MARKS));
    expect(withoutNames(readForm(await readFile(copy)))).toEqual(WANTED);
  });
});
