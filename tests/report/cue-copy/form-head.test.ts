import { describe, expect, test } from 'vitest';
import type { WavFile } from '../../../src/analysis/wav-file.js';
import { chunkHead, formHead } from '../../../src/report/cue-copy/form-head.js';

const GIB = 2 ** 30;

function fileOf(container: WavFile['container'], frames: number): WavFile {
  const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: 44_100 } as const;
  return {
    path: 'invented.wav',
    container,
    format,
    validBits: 16,
    frames,
    dataOffset: 44,
    truncated: false,
  };
}

/** The head of a form of a format chunk and so many bytes of sound, and what is added. */
function headOf(container: WavFile['container'], bytes: number, added: number, extra?: number) {
  const data = { id: 'data', body: 44, size: bytes };
  const pieces = [
    { id: 'fmt ', body: 20, size: 16 },
    data,
    ...(extra === undefined ? [] : [{ id: 'axml', body: 44 + bytes, size: extra }]),
  ];
  const layout = { pieces, data, sampleCount: 7n, end: 44 + bytes };
  const { bytes: head, isLong } = formHead(fileOf(container, bytes / 4), layout, added);
  return { view: Buffer.from(head), isLong, data, pieces };
}

describe('RIFF', () => {
  test('stays RIFF as long as its size is less than 2^32 − 1, which stands for no size', () => {
    // WAVE, format chunk and the head of the data take 36 bytes.
    const { view, isLong } = headOf('RIFF', 0xfffffffe - 36 - 100, 100);
    expect(isLong).toBe(false);
    expect(view.toString('latin1')).toBe('RIFF\xfe\xff\xff\xffWAVE');
  });

  test('becomes RF64 when the marks make it too long', () => {
    const bytes = 0xfffffffc - 36 - 100;
    const { view, isLong, data } = headOf('RIFF', bytes, 104);
    expect(isLong).toBe(true);
    expect(view.toString('latin1', 0, 16)).toBe('RF64\xff\xff\xff\xffWAVEds64');
    expect(view.readUInt32LE(16)).toBe(28);
    expect(view.readBigUInt64LE(20)).toBe(0x1_0000_0000n + 36n);
    expect(view.readBigUInt64LE(28)).toBe(BigInt(bytes));
    expect(view.readBigUInt64LE(36)).toBe(BigInt(bytes / 4));
    expect(view.readUInt32LE(44)).toBe(0);
    expect(view).toHaveLength(48);
    expect(Buffer.from(chunkHead(data, isLong)).toString('latin1')).toBe('data\xff\xff\xff\xff');
  });
});

test('BW64 hands on what stands where RF64 has the number of samples', () => {
  expect(headOf('BW64', 400, 0).view.readBigUInt64LE(36)).toBe(7n);
  expect(headOf('RF64', 400, 0).view.readBigUInt64LE(36)).toBe(100n);
});

test('another chunk over 4 GiB has its size in the table of ds64', () => {
  const { view, pieces } = headOf('BW64', 6 * GIB, 0, 5 * GIB + 1);
  expect(view.readUInt32LE(16)).toBe(40);
  expect(view.readBigUInt64LE(20)).toBe(BigInt(4 + 48 + 24 + 8 + 6 * GIB + 8 + 5 * GIB + 2));
  expect(view.readUInt32LE(44)).toBe(1);
  expect(view.toString('latin1', 48, 52)).toBe('axml');
  expect(view.readBigUInt64LE(52)).toBe(BigInt(5 * GIB + 1));
  const head = Buffer.from(chunkHead(pieces[2] ?? { id: '', body: 0, size: 0 }, false));
  expect(head.toString('latin1')).toBe('axml\xff\xff\xff\xff');
});
