import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shellQuote } from '../../../../src/report/html/page/shell-quote.js';

describe('a word for a shell', () => {
  it('is read back by sh as it was', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), (words) => {
        const plain = words.map((word) => word.replaceAll('\0', ''));
        const line = `printf '%s\\0' ${plain.map(shellQuote).join(' ')}`;
        const read = execFileSync('sh', ['-c', line], { encoding: 'utf8' });
        expect(read.split('\0').slice(0, -1)).toEqual(plain);
      }),
      { numRuns: 40 },
    );
  });

  it('stays bare where nothing in it is special', () => {
    expect(shellQuote('sides/a-1.wav')).toBe('sides/a-1.wav');
    expect(shellQuote('')).toBe("''");
  });
});
