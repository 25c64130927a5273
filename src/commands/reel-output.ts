import { resolve } from 'node:path';
import { reelTextPath } from '../reel/reel-text-path.js';
import { checkOutputFile, type OutputCheck } from '../report/check-output.js';
import { outputNames } from '../report/output-names.js';
import { safeText } from '../report/safe-text.js';
import type { ReportOptions } from './forecast-options.js';
import type { Output } from './outputs.js';
import type { StandardError } from './standard-error.js';

const OPTION = '--reel';

/**
 * A reel of each side with a text beside it: of one side the file that is named, of several one
 * each, `tests.NAME.wav` for `tests.wav`.
 * @param sides what the sides are known by
 * @param taken what the run reads and what else it writes
 * @throws UsageError for a path that cannot be written
 */
export async function reelOutput(
  path: string,
  { units }: ReportOptions,
  sides: readonly string[],
  taken: Omit<OutputCheck, 'option'>,
  cwd: string,
  errors: StandardError,
): Promise<Output> {
  const target = path === '' ? '' : resolve(cwd, path);
  const names = outputNames(sides);
  const reels = new Map(
    sides.map((side, at) => [side, sides.length > 1 ? withName(target, names[at] ?? '') : target]),
  );
  for (const reel of reels.size === 0 ? [target] : reels.values()) {
    await checkOutputFile(reel, { ...taken, option: OPTION });
    await checkOutputFile(reelTextPath(reel), { ...taken, option: OPTION });
  }
  return {
    side: async (file, key, input) => {
      const reel = reels.get(key) ?? target;
      if (file.readFrom === 'motion') {
        const lost = 'a saved motion carries no sound to cut a test of; --reel left out';
        errors.notice(`${safeText(file.name)}: ${lost}`);
        return;
      }
      const { writeReel } = await import('../reel/write-reel.js');
      const passages = await writeReel(input, file, reel, units);
      if (passages === 0) {
        errors.notice(`${safeText(file.name)}: nothing in it moves the groove; --reel left out`);
      }
    },
    failure: () => {},
    end: async () => {},
  };
}

function withName(path: string, name: string): string {
  const bare = path.replace(/(?<=[^\\/])\.wav$/i, '');
  return `${bare}.${name}.wav`;
}
