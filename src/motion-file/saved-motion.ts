import type { MotionSummary } from '../analysis/motion.js';
import type { SourceFile } from '../forecast-result.js';
import type { BakedSettings } from './baked-settings.js';

/** What a motion file holds: a motion summary, and what it was measured from and with. */
export interface SavedMotion {
  /** The side's name, as the forecast that measured it had it. */
  readonly name: string;
  /** The audio it was measured in; its `path` is not kept, and reads as the motion file's own. */
  readonly source: SourceFile;
  /** Whether that audio broke off. */
  readonly truncated: boolean;
  /** The settings that went into the pass. */
  readonly settings: BakedSettings;
  /** SHA-256 of the frames as they lay in the file, hexadecimal; null where nobody asked. */
  readonly audioSha256: string | null;
  readonly motion: MotionSummary;
}
