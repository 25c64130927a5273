import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromPrintable, toPrintable } from '../../../../src/report/html/data/printable.js';

describe('bytes as printable text', () => {
  it('come back as they were, however many', () => {
    const property = (bytes: Uint8Array) => {
      expect(fromPrintable(toPrintable(bytes))).toEqual(bytes);
    };
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), property), { numRuns: 1000 });
  });

  it('need no escaping in HTML', () => {
    const bytes = Uint8Array.from({ length: 2 ** 16 }, (_, at) => (at * 40_503) >> 8);
    expect(toPrintable(bytes)).toMatch(/^[!-~]+$/);
    expect(toPrintable(bytes)).not.toMatch(/[&<`]/);
  });

  it('are 16/13 as long: 13 bits in two characters', () => {
    const { length } = toPrintable(new Uint8Array(13_000));
    expect(length).toBe(16_000);
  });

  it('are refused where a character is no one of theirs', () => {
    expect(() => fromPrintable('ab<c')).toThrow(RangeError);
  });
});
