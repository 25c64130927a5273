import { isFamilyRate } from '../analysis/band-limit.js';
import { cutPart, type Part, wholeProgram } from '../analysis/parts.js';
import { programOf } from '../analysis/program.js';
import type { SampleFormat } from '../analysis/sample-format.js';
import { settlingSeconds } from '../analysis/settling.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { type EditSpan, RAMP_SECONDS } from './sound-edit.js';

/** More than the low band's windows reach beyond a quarter, before and after; see parts.ts. */
const WINDOW_SECONDS: Seconds = 0.25;

/** The parts that edits can reach, each once: edits whose reaches meet share one. */
export function partsTouched(
  edits: readonly EditSpan[],
  format: SampleFormat,
  frames: number,
  settings: Settings,
): Part[] {
  const program = programOf(format, frames);
  const whole = wholeProgram(program, settings);
  if (edits.length === 0) return [];
  if (!isFamilyRate(format.sampleRate)) return [whole];
  const turn = 60 / settings.rpm;
  const quarter = turn / 4;
  const reach = (1 + settings.speedTolerance) * turn + settlingSeconds(settings);
  const spans = edits
    .map(({ fromSeconds, untilSeconds }) => ({
      first: Math.floor((fromSeconds - RAMP_SECONDS - WINDOW_SECONDS) / quarter),
      end: Math.ceil((untilSeconds + RAMP_SECONDS + WINDOW_SECONDS + reach) / quarter),
    }))
    .map(({ first, end }) => ({
      first: Math.max(0, first),
      end: Math.min(end, whole.endQuarter),
    }))
    .filter(({ first, end }) => first < end)
    .sort((a, b) => a.first - b.first);
  const apart: { first: number; end: number }[] = [];
  for (const { first, end } of spans) {
    const last = apart.at(-1);
    if (last !== undefined && first <= last.end) last.end = Math.max(last.end, end);
    else apart.push({ first, end });
  }
  return apart.flatMap(({ first, end }) =>
    cutPart({ ...whole, firstQuarter: first, endQuarter: end }, 1, program, settings),
  );
}
