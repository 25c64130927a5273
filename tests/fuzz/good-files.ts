import { readFileSync } from 'node:fs';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { type AiffOptions, aiffBytes, aiffChunk } from '../support/aiff-writer.js';
import { emptyMotion } from '../support/empty-motion.js';
import { type FlacOptions, flacBytes } from '../support/flac-writer.js';
import { savedMotion } from '../support/saved-motion.js';
import {
  ascii,
  chunk,
  joined,
  type WavOptions,
  wavBytes,
  wordBytes,
} from '../support/wav-writer.js';

/** What a file is read as. */
export type Kind = 'wav' | 'aiff' | 'flac' | 'motion' | 'profile' | 'sheet' | 'accepted' | 'rules';

export interface GoodFile {
  readonly name: string;
  readonly kind: Kind;
  readonly bytes: Uint8Array;
}

/** Few, so that whatever is wrong is tried often; more than a block of FLAC. */
const FRAMES = 500;

/** A file of every encoding in every container that is read, and of every kind of document. */
export function goodFiles(): GoodFile[] {
  return [...wavs(), ...aiffs(), ...flacs(), ...motions(), ...documents()];
}

function integers(bits: number, words = 2 * FRAMES): number[] {
  const step = 2 ** bits / 17_011;
  return Array.from({ length: words }, (_, word) => {
    return Math.trunc((((word * 7919) % 15_013) - 7506) * step);
  });
}

const floats = Array.from({ length: 2 * FRAMES }, (_, word) => Math.sin(word / 9) / 3);

function wavs(): GoodFile[] {
  const odd = [chunk('bext', ascii('odd')), chunk('JUNK', new Uint8Array(6))];
  const all: readonly (readonly [name: string, options: WavOptions])[] = [
    ['8 bits', { words: integers(8), bitDepth: 8 }],
    ['16 bits, mono', { words: integers(16), channels: 1 }],
    ['24 bits', { words: integers(24), bitDepth: 24, sampleRate: 96_000 }],
    ['32 bits', { words: integers(32), bitDepth: 32, sampleRate: 48_000 }],
    ['float 32', { words: floats, encoding: 'float', bitDepth: 32 }],
    ['float 64, 192 kHz', { words: floats, encoding: 'float', bitDepth: 64, sampleRate: 192_000 }],
    ['extensible 24', { words: integers(24), bitDepth: 24, extensible: true, validBits: 20 }],
    ['extensible float', { words: floats, encoding: 'float', bitDepth: 32, extensible: true }],
    ['RF64', { words: integers(16), container: 'RF64' }],
    ['BW64, float', { words: floats, encoding: 'float', bitDepth: 32, container: 'BW64' }],
    ['odd chunks, format last', { words: integers(16), first: odd, last: odd, formatLast: true }],
    ['an odd rate', { words: integers(16), sampleRate: 37_800 }],
    ['marks', { words: integers(16), last: marks() }],
    ['RF64 with marks first', { words: integers(16), container: 'RF64', first: marks() }],
  ];
  return all.map(([name, options]) => {
    return { name: `WAV, ${name}`, kind: 'wav', bytes: wavBytes(options) };
  });
}

/** Two cue points with labels, a length and a note. */
function marks(): Uint8Array[] {
  const numbers = (...values: number[]) => wordBytes(values, 'pcm', 32);
  const point = (name: number, at: number) =>
    joined([numbers(name, at), ascii('data'), numbers(0, 0, at)]);
  const texts = [
    chunk('labl', joined([numbers(1), ascii('Harbour Steps\0')])),
    chunk('labl', joined([numbers(2), ascii('L\xf6w\0')])),
    chunk('ltxt', joined([numbers(2, 40), ascii('rgn '), new Uint8Array(8)])),
    chunk('note', joined([numbers(1), ascii('loud\0')])),
  ];
  return [
    chunk('cue ', joined([numbers(2), point(1, 0), point(2, 250)])),
    chunk('LIST', joined([ascii('adtl'), ...texts])),
    chunk('LIST', ascii('INFOIART\x04\0\0\0none')),
  ];
}

function aiffs(): GoodFile[] {
  const sound = Uint8Array.from(integers(16), (word) => word & 0xff);
  const ofFloats = (bits: number) => wordBytes(floats, 'float', bits).reverse();
  const odd = [aiffChunk('COMT', ascii('odd')), aiffChunk('MARK', new Uint8Array(2))];
  const all: readonly (readonly [name: string, options: AiffOptions])[] = [
    ['AIFF, 16 bits', { sound }],
    ['AIFF, 8 bits, mono', { sound, sampleSize: 8, channels: 1 }],
    ['AIFF, 24 bits, the format last', { sound, sampleSize: 24, commonLast: true }],
    ['AIFF, 20 bits, offset and odd chunks', { sound, sampleSize: 20, offset: 3, first: odd }],
    ['AIFF-C, NONE', { sound, compression: 'NONE', last: odd }],
    ['AIFF-C, twos', { sound, compression: 'twos', sampleRate: 48_000 }],
    ['AIFF-C, sowt', { sound, compression: 'sowt' }],
    ['AIFF-C, raw', { sound, compression: 'raw ', sampleSize: 8 }],
    ['AIFF-C, in24', { sound, compression: 'in24', sampleSize: 24 }],
    ['AIFF-C, in32', { sound, compression: 'in32', sampleSize: 32 }],
    ['AIFF-C, fl32', { sound: ofFloats(32), compression: 'fl32', sampleSize: 32 }],
    ['AIFF-C, FL64', { sound: ofFloats(64), compression: 'FL64', sampleSize: 64 }],
  ];
  return all.map(([name, options]) => ({ name, kind: 'aiff', bytes: aiffBytes(options) }));
}

function flacs(): GoodFile[] {
  const blockFrames = 100;
  const pads = [[1, new Uint8Array(9)] as const, [4, ascii('no names in here')] as const];
  const all: readonly (readonly [name: string, options: FlacOptions])[] = [
    ['16 bits', { words: integers(16), blockFrames }],
    ['8 bits, mono', { words: integers(8), blockFrames, bits: 8, channels: 1 }],
    ['24 bits', { words: integers(24), blockFrames, bits: 24, sampleRate: 96_000 }],
    ['blocks of many lengths', { words: integers(16), blockFrames: [16, 284, 1, 199] }],
    ['metadata', { words: integers(16), blockFrames, metadata: pads, tellsFormat: false }],
    ['long silence', { words: new Int8Array(3 * 65_535), blockFrames: 65_535, channels: 1 }],
  ];
  return all.map(([name, options]) => {
    return { name: `FLAC, ${name}`, kind: 'flac', bytes: flacBytes(options) };
  });
}

function motions(): GoodFile[] {
  const moving = emptyMotion(4);
  for (const row of [moving.approach, moving.lift, moving.lateral, moving.left.velocityPeak]) {
    for (let bin = 0; bin < row.length; bin++) row[bin] = Math.sin(bin) / 30_000;
  }
  return [
    { name: 'motion, still', kind: 'motion', bytes: encodeMotion(savedMotion(emptyMotion(1))) },
    { name: 'motion, moving', kind: 'motion', bytes: encodeMotion(savedMotion(moving)) },
  ];
}

const ACCEPTED = `{ "format": "furrow.accepted/1", // of an invented side
  "accepted": [
    { "id": "overcut", "side": "side.wav", "fromSeconds": 12.5, "untilSeconds": 13,
      "severity": "fault", "value": -4.5e-6, "reason": "seen on the test cut",
      "audioSha256": "${'0'.repeat(64)}" },
    { "id": "too-long", "side": "side.wav", "fromSeconds": null, "untilSeconds": null,
      "reason": "as agreed", "audioSha256": "${'1'.repeat(64)}" },
  ] }
`;

const RULES = `{ // of an invented house
  "sampleRates": [44100, 96000], "bitDepths": [24, "float"], "containers": ["WAV"],
  "longest": [{ "disc": 12, "rpm": 33, "minutes": 22 }],
  "leastLand": "1mil", "mostVerticalLow": "20um",
  "headSilence": { "least": 0.1, "most": 2 }, "tailSilence": { "most": 5 },
  "name": "[a-z]+(-[a-z]+)* side [AB][.]wav", "severity": { "overcut": "fault" }
}
`;

function documents(): GoodFile[] {
  const example = (name: string) => readFileSync(`examples/${name}`);
  return [
    { name: 'profile', kind: 'profile', bytes: example('furrow.profile.json') },
    { name: 'sheet', kind: 'sheet', bytes: example('tin-heron.sheet.json') },
    { name: 'accepted findings', kind: 'accepted', bytes: Buffer.from(ACCEPTED) },
    { name: 'rules', kind: 'rules', bytes: Buffer.from(RULES) },
  ];
}
