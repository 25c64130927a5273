import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileMarks } from '../../src/sheet/file-marks.js';
import { aiffBytes, aiffChunk, bigEndian } from '../support/aiff-writer.js';
import { flacBytes } from '../support/flac-writer.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, joined } from '../support/wav-writer.js';

const FRAMES = 5000;

async function marksOf(name: string, bytes: Uint8Array) {
  const path = join(await temporaryFolder(), name);
  await writeFile(path, bytes);
  return await fileMarks(path);
}

/** A mark of an AIFF file; number, position, and a name that is padded to an even whole. */
function mark(number: number, position: number, name: Uint8Array): Uint8Array {
  const padding = new Uint8Array((name.length + 1) % 2);
  return joined([
    bigEndian(number, 2),
    bigEndian(position, 4),
    bigEndian(name.length, 1),
    name,
    padding,
  ]);
}

function markChunk(marks: readonly Uint8Array[], count = marks.length): Uint8Array {
  return aiffChunk('MARK', joined([bigEndian(count, 2), ...marks]));
}

const AIFF_MARKS = [
  mark(7, 3000, ascii('Slow Kite')),
  mark(1, 0, ascii('Tin Bell')),
  mark(2, 4000, Uint8Array.of(0xc9, 0x74, 0x65)),
  mark(3, 9000, ascii('behind the end')),
];

describe('marks of an AIFF file', () => {
  it.each([
    ['before the sound', { first: [markChunk(AIFF_MARKS)] }],
    ['behind it', { last: [aiffChunk('ANNO', ascii('odd')), markChunk(AIFF_MARKS)] }],
    ['told to be more than there are', { last: [markChunk(AIFF_MARKS, 900)] }],
  ])('are read in the order of time, %s', async (_, chunks) => {
    const sound = new Uint8Array(4 * FRAMES);
    const { places, frames } = await marksOf('marked.aiff', aiffBytes({ sound, ...chunks }));
    expect(frames).toBe(FRAMES);
    expect(places).toEqual([
      { sample: 0, label: 'Tin Bell' },
      { sample: 3000, label: 'Slow Kite' },
      { sample: 4000, label: 'Éte' },
    ]);
  });

  it('are none where the chunk ends in the middle of one', async () => {
    const sound = new Uint8Array(4 * FRAMES);
    const cut = aiffChunk('MARK', joined([bigEndian(2, 2), new Uint8Array(5)]));
    expect((await marksOf('cut.aiff', aiffBytes({ sound, last: [cut] }))).places).toEqual([]);
  });
});

/** A track of a FLAC file's cue sheet: its place, and its index points after it. */
function cueTrack(offset: number, number: number, points: readonly [number, number][]): Uint8Array {
  return joined([
    bigEndian(offset, 8),
    bigEndian(number, 1),
    new Uint8Array(26),
    bigEndian(points.length, 1),
    ...points.map(([at, index]) =>
      joined([bigEndian(at, 8), bigEndian(index, 1), new Uint8Array(3)]),
    ),
  ]);
}

function cueSheet(tracks: readonly Uint8Array[], count = tracks.length): Uint8Array {
  return joined([new Uint8Array(395), bigEndian(count, 1), ...tracks]);
}

const CUE_TRACKS = [
  cueTrack(0, 1, [[0, 1]]),
  cueTrack(2000, 2, [
    [0, 0],
    [588, 1],
  ]),
  cueTrack(4000, 3, []),
  cueTrack(FRAMES, 170, []),
];

describe('tracks of a FLAC file’s cue sheet', () => {
  it('begin at their index point 1, the lead-out is none', async () => {
    const metadata = [[5, cueSheet(CUE_TRACKS)]] as const;
    const words = new Int32Array(2 * FRAMES);
    const { places, frames } = await marksOf('cut.flac', flacBytes({ words, metadata }));
    expect(frames).toBe(FRAMES);
    expect(places.map(({ sample }) => sample)).toEqual([0, 2588, 4000]);
  });

  it('are as many as the block holds, whatever it says', async () => {
    const metadata = [[5, cueSheet(CUE_TRACKS.slice(0, 2), 99)]] as const;
    const words = new Int32Array(2 * FRAMES);
    const { places } = await marksOf('short.flac', flacBytes({ words, metadata }));
    expect(places.map(({ sample }) => sample)).toEqual([0, 2588]);
  });
});

describe('marks that are noise', () => {
  it('are read without an error, and lie in the file', async () => {
    const sound = new Uint8Array(4 * FRAMES);
    const words = new Int32Array(2 * FRAMES);
    const folder = await temporaryFolder();
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), fc.boolean(), async (noise, isAiff) => {
        const bytes = isAiff
          ? aiffBytes({ sound, last: [aiffChunk('MARK', noise)] })
          : flacBytes({ words, metadata: [[5, noise]] });
        const path = join(folder, 'noise');
        await writeFile(path, bytes);
        const { places } = await fileMarks(path);
        expect(places.every(({ sample }) => sample >= 0 && sample < FRAMES)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
