import { readFileSync } from 'node:fs';
import { z } from 'zod';

const replayCurve = z.strictObject({
  rate: z.number(),
  hz: z.array(z.number()),
  db: z.array(z.number()),
  degrees: z.array(z.number()),
});
const replayCurves = z.strictObject({ program: z.string(), curves: z.array(replayCurve) });
const loudnessReadings = z.strictObject({
  program: z.string(),
  readings: z.array(z.strictObject({ name: z.string(), lufs: z.number(), truePeak: z.number() })),
});

/** Replay curve of an outside program, dB re 1 kHz and degrees. */
export type ReplayCurve = z.infer<typeof replayCurve>;

/** What `record.mjs` has written of a program's replay curves. */
export function recordedCurves(name: 'sox-riaa' | 'ffmpeg-riaa'): ReplayCurve[] {
  return replayCurves.parse(readRecording(name)).curves;
}

/** What it has written of ffmpeg's loudness meter. */
export function recordedLoudness(): z.infer<typeof loudnessReadings>['readings'] {
  return loudnessReadings.parse(readRecording('ffmpeg-loudness')).readings;
}

function readRecording(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`expected/${name}.json`, import.meta.url), 'utf8'));
}
