import type { MotionSummary } from '../../src/analysis/motion.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { Finding, SourceFacts } from '../../src/model/forecast-types.js';
import type { Settings } from '../../src/settings.js';
import { EXACT, SOUND_SOURCE, settingsWith } from './model-settings.js';

/** A lathe without a fault that cuts at one pitch. */
const FIXED = { ...EXACT, executes: 'fixed', basePitch: 100e-6 } as const;

/** The forecast of a side on it, at level 0 dB. */
export function findingsOf(
  motion: MotionSummary,
  changes: Partial<Settings> = {},
  source: Partial<SourceFacts> = {},
) {
  const settings = settingsWith({ ...FIXED, ...changes });
  return forecastSide(motion, settings, {
    levelDb: 0,
    planner: 'turn-ahead',
    source: { ...SOUND_SOURCE, ...source },
  });
}

/** Ids and severities, in order. */
export function said(findings: readonly Finding[]): string[] {
  return findings.map(({ id, severity }) => `${id} ${severity}`);
}
