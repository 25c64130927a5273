import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toPrintable } from '../../../../src/report/html/data/printable.js';
import { unpack } from '../../../../src/report/html/page/unpack.js';
import { seeded } from '../../../support/signals.js';

/** So noisy that it is stored as it is: nothing but the checksum knows what it was. */
const next = seeded(5);
const BYTES = Uint8Array.from({ length: 3000 }, () => Math.floor(256 * next()));
const TEXT = toPrintable(deflateSync(BYTES));
/** The last characters may hold bits that stand for nothing. */
const CERTAIN = TEXT.length - 2;

describe('the data of a page', () => {
  it('are unpacked as they were', async () => {
    expect(await unpack(`\n${TEXT}\n`)).toEqual(BYTES);
  });

  it('are refused with any one character changed', async () => {
    const property = async (at: number, by: string) => {
      fc.pre(by !== TEXT[at]);
      await expect(unpack(TEXT.slice(0, at) + by + TEXT.slice(at + 1))).rejects.toThrow();
    };
    const characters = fc.integer({ min: 33, max: 126 }).map((code) => String.fromCharCode(code));
    await fc.assert(fc.asyncProperty(fc.nat(CERTAIN - 1), characters, property), { numRuns: 200 });
  });

  it('are refused wherever they break off', async () => {
    const property = async (length: number) => {
      await expect(unpack(TEXT.slice(0, length))).rejects.toThrow();
    };
    await fc.assert(fc.asyncProperty(fc.nat(CERTAIN), property), { numRuns: 100 });
  });
});
