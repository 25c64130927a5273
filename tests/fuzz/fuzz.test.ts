// Five thousand files with something wrong, always the same ones; `npm run fuzz` tries others.
import { describe, expect, test } from 'vitest';
import { INPUT_ERROR_CODES } from '../../src/errors.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { fuzzCase } from './fuzz-case.js';
import { type GoodFile, goodFiles } from './good-files.js';
import { timed } from './run-cases.js';

const SEED = 1;
const COUNT = 5000;
/** Rounds: a forecast of every file that can be read would take longer than all tests of a folder. */
const EVERY = 12;
/** What the tests have taken before is in it as well. */
const MOST_BYTES_MORE = 200e6;

const GOODS = goodFiles();

/** Codes of which the bytes of a file are never the reason. */
const OF_ACCESS = new Set<string>([
  'not-found',
  'bad-name',
  'not-a-file',
  'link-outside',
  'link-loop',
  'no-permission',
  'read-failed',
  'changed-while-read',
  // Of tiny files none is as long.
  'overlong',
]);

test('all the good files are read and forecast', async () => {
  const folder = await temporaryFolder();
  for (const good of GOODS) {
    const tried = await timed({ index: 0, round: 0, good, bytes: good.bytes }, folder, true);
    expect(tried, good.name).toMatchObject({ outcome: 'read' });
  }
});

describe('files with something wrong are read, or refused as was promised, in time', () => {
  const outcomes = new Map<string, number>();

  test.each(GOODS.map((good, first) => ({ ...good, first })))('$name', async (good) => {
    const folder = await temporaryFolder();
    const before = process.memoryUsage().rss;
    const here = new Set<string>();
    for (let index = good.first; index < COUNT; index += GOODS.length) {
      const one = fuzzCase(GOODS, SEED, index);
      const { outcome, bug } = await timed(one, folder, one.round % EVERY === 0);
      expect(bug, `${good.name}, file ${index} of seed ${SEED}`).toBeUndefined();
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
      here.add(outcome);
    }
    // All the same would mean that little was reached.
    if (/float|fl32|FL64/.test(good.name)) expect(here).toContain('bad-sample');
    expect(here.size).toBeGreaterThan(isDocument(good) ? 1 : 3);
    expect(process.memoryUsage().rss - before).toBeLessThan(MOST_BYTES_MORE);
  });

  test('a third of them are read, and every code that bytes can cause is among the others', () => {
    expect([...outcomes.values()].reduce((sum, count) => sum + count, 0)).toBe(COUNT);
    expect(outcomes.get('read')).toBeGreaterThan(COUNT / 3);
    const codes = INPUT_ERROR_CODES.filter((code) => !OF_ACCESS.has(code));
    expect(codes.filter((code) => !outcomes.has(code))).toEqual([]);
  });
});

function isDocument({ kind }: GoodFile): boolean {
  return kind === 'profile' || kind === 'sheet' || kind === 'accepted' || kind === 'rules';
}
