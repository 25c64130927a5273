import type { MotionSummary } from '../../src/analysis/motion.js';
import { bakedSettings } from '../../src/motion-file/baked-settings.js';
import type { SavedMotion } from '../../src/motion-file/saved-motion.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';

/** A summary under the default profile, but for its own speed, as it would be saved from an invented stereo file at 44.1 kHz. */
export function savedMotion(
  motion: MotionSummary,
  changes: Partial<SavedMotion> = {},
): SavedMotion {
  return {
    name: 'invented-side.wav',
    source: {
      path: 'invented.motion',
      container: 'RIFF',
      encoding: 'pcm',
      bitDepth: 24,
      sampleRate: 44_100,
      channels: 2,
      frames: Math.max(1, Math.round(motion.durationSeconds * 44_100)),
      durationSeconds: motion.durationSeconds,
    },
    truncated: false,
    settings: { ...bakedSettings(resolveProfile()), rpm: 60 / motion.turnSeconds },
    audioSha256: null,
    motion,
    ...changes,
  };
}
