/** Round steps of time, seconds; beyond the last its multiples. */
const TIME_STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 180, 300, 600];

/** Multiples of 1, 2 or 5 times a power of ten from `from` to `to`, at most about `count`. */
export function roundTicks(from: number, to: number, count: number): number[] {
  const rough = (to - from) / Math.max(1, count);
  if (!(rough > 0) || !Number.isFinite(rough)) return [];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((factor) => factor * power >= rough * 0.999) ?? 10);
  return multiples(from, to, step);
}

/** Round times, seconds, at most about `count`. */
export function timeTicks(from: number, to: number, count: number): number[] {
  const rough = (to - from) / Math.max(1, count);
  if (!(rough > 0) || !Number.isFinite(rough)) return [];
  const step = TIME_STEPS.find((each) => each >= rough) ?? Math.ceil(rough / 600) * 600;
  return multiples(from, to, step);
}

function multiples(from: number, to: number, step: number): number[] {
  const ticks: number[] = [];
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  // Adding 0 turns −0 into 0; twelve digits hide what the product leaves.
  for (let at = first; at <= last; at++) ticks.push(Number((at * step).toPrecision(12)) + 0);
  return ticks;
}
