import { cp, mkdir, rename, symlink, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { knownFiles } from '../../../src/intake/watch/known-files.js';
import { readReports } from '../../../src/intake/watch/read-reports.js';
import { reportsIn, watching } from '../../support/watching.js';

test('a file of a folder that a link out of the tree has replaced is not read', async () => {
  const watch = await watching({ settle: 300 });
  const at = (name: string) => join(watch.folder, name);
  await mkdir(join(watch.out, '../outside'));
  await writeFile(join(watch.out, '../outside/1.wav'), 'of somebody else');
  await mkdir(at('sub'));
  await writeFile(at('sub/1.wav'), 'one');
  await watch.until(() => watch.pathsOf('arrived').includes('sub/1.wav'));
  await rename(at('sub'), join(watch.out, '../away'));
  await symlink('../outside', at('sub'));
  await watch.until(() => watch.pathsOf('deleted').includes('sub/1.wav'));
  await watch.until(() => watch.pathsOf('failed').includes('sub'));
  expect(watch.pathsOf('examined')).toEqual([]);
});

test('a file with a time before 1970 is known again by the next watch', async () => {
  const first = await watching();
  await writeFile(join(first.folder, '1.wav'), 'one');
  // A negative number would be taken for now.
  await utimes(join(first.folder, '1.wav'), new Date(-1e12), new Date(-1e12));
  await first.until(() => first.pathsOf('examined').length === 1);
  await first.stop();
  const second = await watching({}, join(first.out, '..'));
  expect(second.events).toContainEqual({ type: 'caught-up', files: 1, unchanged: 1 });
});

test('copies of reports do not draw the next report of their file to where they lie', async () => {
  const first = await watching();
  await writeFile(join(first.folder, '1.wav'), 'one');
  await first.until(() => first.pathsOf('examined').length === 1);
  await first.stop();
  const report = join(first.out, '1.wav.furrow.json');
  for (const copy of ['a', 'z']) await cp(report, join(first.out, copy, '1.wav.furrow.json'));
  const second = await watching({}, join(first.out, '..'));
  await writeFile(join(second.folder, '1.wav'), 'another');
  await second.until(() => second.pathsOf('examined').length === 1);
  const reports = await reportsIn(second.out);
  expect(reports.get('1.wav.furrow.json')?.file.bytes).toBe('another'.length);
});

test('a folder of reports that cannot be read is told, and ends nothing', async () => {
  const closed = await readReports(
    '/dev/null/out',
    '0'.repeat(64),
    knownFiles(() => true),
  );
  expect(closed).toEqual([expect.stringContaining('--out: .: ')]);
});
