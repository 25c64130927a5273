import { type Part, partsOf } from './analysis/parts.js';
import { isMotionFile } from './motion-file/is-motion.js';
import { type SideInput, withSide } from './open-side.js';
import type { Settings } from './settings.js';

/**
 * The parts in which a side can be measured by several threads; none of a file whose motion was
 * measured before.
 */
export async function partsOfSide(input: SideInput, settings: Settings): Promise<readonly Part[]> {
  if (typeof input === 'string' && (await isMotionFile(input))) return [];
  return await withSide(input, settings, async ({ source, analysed }) =>
    partsOf(source.format, source.frames, analysed),
  );
}
