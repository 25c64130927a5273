import { createAnalyser } from '../../src/analysis/analyse.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import type { ComparedSide } from '../../src/model/compare-types.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { Settings } from '../../src/settings.js';
import { SOUND_SOURCE, settingsWith } from './model-settings.js';
import { seeded } from './signals.js';

export const RATE = 44_100;

/** Plucked notes of an instrument that does not exist, at uneven times; the same for a seed. */
export function inventedProgram(seconds: number, seed = 1): Stereo {
  const left = new Float64Array(seconds * RATE);
  const right = new Float64Array(seconds * RATE);
  const next = seeded(seed);
  for (let at = 0; at < seconds; at += 0.1 + 0.9 * next()) {
    const hertz = 50 * 2 ** (2 * next());
    const amplitude = 0.35 * next();
    // Part of each note is in one channel only, so that the groove moves up and down too.
    const balance = 0.4 + 0.6 * next();
    for (let frame = 0; frame < 0.8 * RATE; frame++) {
      const place = Math.floor(at * RATE) + frame;
      if (place >= left.length) break;
      const time = frame / RATE;
      const note = amplitude * Math.exp(-5 * time) * Math.sin(2 * Math.PI * hertz * time);
      left[place]! += note;
      right[place]! += balance * note;
    }
  }
  return { left, right };
}

/** Silence before a program, or without its first seconds if negative. */
export function shifted({ left, right }: Stereo, seconds: number): Stereo {
  const frames = Math.round(seconds * RATE);
  const shift = (signal: Float64Array) => {
    if (frames < 0) return signal.slice(-frames);
    const later = new Float64Array(signal.length + frames);
    later.set(signal, frames);
    return later;
  };
  return { left: shift(left), right: shift(right) };
}

/** A program with a gain from one time to another. */
export function louderBetween(
  { left, right }: Stereo,
  gainDb: number,
  from = 0,
  until = Number.POSITIVE_INFINITY,
): Stereo {
  const gain = 10 ** (gainDb / 20);
  const change = (signal: Float64Array) =>
    signal.map((value, frame) =>
      frame >= from * RATE && frame < until * RATE ? gain * value : value,
    );
  return { left: change(left), right: change(right) };
}

/** The forecast of a program by the real pass, on a lathe of one narrow pitch. */
export async function comparedSide(
  { left, right }: Stereo,
  changes: Partial<Settings> = {},
  name = 'invented.wav',
): Promise<ComparedSide> {
  const settings = settingsWith({ executes: 'fixed', basePitch: 90e-6, ...changes });
  const format: SampleFormat = {
    encoding: 'float',
    bitDepth: 64,
    channels: 2,
    sampleRate: RATE,
  };
  const words = new Float64Array(2 * left.length);
  for (const [frame, value] of left.entries()) {
    words[2 * frame] = value;
    words[2 * frame + 1] = right[frame]!;
  }
  const analyser = await createAnalyser(format, left.length, settings);
  analyser.push(new Uint8Array(words.buffer));
  const motion = analyser.finish();
  const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
  const forecast = forecastSide(motion, settings, request);
  return { name, settings, program: motion.program, forecast, motion };
}
