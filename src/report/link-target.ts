import { lstat, readlink, realpath } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/** As many links as Linux follows. */
const MOST_LINKS = 40;

/** What a name leads to through links, also where there is nothing yet. */
export async function linkTarget(path: string, links = 0): Promise<string> {
  const isLink = await lstat(path).then(
    (stats) => stats.isSymbolicLink(),
    () => false,
  );
  // A loop of links is left to fail where it is opened.
  if (!isLink || links === MOST_LINKS) return path;
  const folder = await realpath(dirname(path));
  return linkTarget(resolve(folder, await readlink(path)), links + 1);
}
