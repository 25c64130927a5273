import type { Complex } from '../../src/analysis/complex.js';
import type { MotionSummary } from '../../src/analysis/motion.js';
import type { Settings } from '../../src/settings.js';
import {
  type Endless,
  fromLines,
  largestBetween,
  type PairLines,
  ringMinimum,
  shapeLines,
} from '../support/brute-force.js';
import { exactAcceleration, exactDisplacement, exactVelocity } from '../support/exact-curve.js';
import { fullScaleVelocityOf } from './summary-of.js';

/** A period of the program in frames, and the grid on which its motion is computed. */
export interface Grid {
  readonly period: number;
  /** Grid frames a frame. */
  readonly finer: number;
  readonly rate: number;
  /** speedTolerance·T, grid frames. */
  readonly slack: number;
}

/** Motion without end on a fine grid, each by its grid frame from the program's first on. */
export interface BruteMotion {
  readonly gridRate: number;
  readonly approach: Endless;
  readonly approachLoose: Endless;
  readonly lift: Endless;
  readonly sink: Endless;
  readonly lateral: Endless;
  readonly outward: Endless;
  readonly inward: Endless;
  /** |u̇| and |ü|. */
  readonly velocity: Readonly<Record<'left' | 'right', Endless>>;
  readonly acceleration: Readonly<Record<'left' | 'right', Endless>>;
}

/** Walls and what is made of them, by exact multiplication of a periodic program's lines. */
export function bruteMotion(lines: PairLines, grid: Grid, settings: Settings): BruteMotion {
  const { period, finer, rate, slack } = grid;
  const k = fullScaleVelocityOf(settings);
  const spacing = rate / period;
  const moved = (by: (hz: number) => Complex) =>
    fromLines(shapeLines(lines, spacing, by), period * finer);
  const scaledBy = (factor: number, formula: (hz: number) => Complex) => (hz: number) => {
    const { re, im } = formula(hz);
    return { re: factor * re, im: factor * im };
  };
  const edges = moved(scaledBy(Math.SQRT2 * k, exactDisplacement));
  // A turn earlier by turning each line's phase: a turn need not be whole grid frames.
  const facing = moved((hz) => {
    const { re, im } = exactDisplacement(hz);
    const angle = (-2 * Math.PI * hz * 60) / settings.rpm;
    const [c, s] = [Math.SQRT2 * k * Math.cos(angle), Math.SQRT2 * k * Math.sin(angle)];
    return { re: re * c - im * s, im: re * s + im * c };
  }).left;
  const least = ringMinimum(facing, slack);
  const velocity = moved(scaledBy(k, exactVelocity));
  const acceleration = moved(scaledBy(k, exactAcceleration));
  const ring = (signal: Float64Array): Endless => {
    const frames = signal.length;
    return (n) => signal[((n % frames) + frames) % frames] ?? 0;
  };
  const [inner, outer] = [ring(edges.left), ring(edges.right)];
  const [before, lowest] = [ring(facing), ring(least)];
  const size = (signal: Float64Array): Endless => {
    const at = ring(signal);
    return (n) => Math.abs(at(n));
  };
  return {
    gridRate: rate * finer,
    approach: (n) => outer(n) - before(n),
    approachLoose: (n) => outer(n) - lowest(n),
    // z = (u_L − u_R)/√2 and x = (u_L + u_R)/√2 of edges that are √2·u.
    lift: (n) => (inner(n) - outer(n)) / 2,
    sink: (n) => (outer(n) - inner(n)) / 2,
    lateral: (n) => Math.abs(inner(n) + outer(n)) / 2,
    outward: outer,
    inward: (n) => -inner(n),
    velocity: { left: size(velocity.left), right: size(velocity.right) },
    acceleration: { left: size(acceleration.left), right: size(acceleration.right) },
  };
}

/** A span of grid frames, and by how much its ends may be off. */
interface Span {
  readonly from: number;
  readonly until: number;
  readonly give: number;
}

/**
 * What a maximum over a span should be: the brute force's own, or where a peak lies so near an end
 * that it may count or not, the value nearest to `actual` between the two.
 */
function expectedMaximum(signal: Endless, { from, until, give }: Span, actual: number): number {
  const least = largestBetween(signal, from + give, until - give);
  const most = Math.max(
    least,
    largestBetween(signal, from - give, from + give),
    largestBetween(signal, until - give, until + give),
  );
  return Math.min(most, Math.max(least, actual));
}

const FIELDS = [
  'lift',
  'sink',
  'lateral',
  'outward',
  'inward',
  'approach',
  'approachLoose',
] as const;

/** A row of the summary beside what it should be. */
export interface Compared {
  readonly name: string;
  readonly kind: 'displacement' | 'velocity' | 'acceleration';
  readonly actual: readonly number[];
  readonly expected: readonly number[];
}

/**
 * The summary's bins and quarters that lie wholly between two times, beside the brute force's.
 * @param give seconds by which a peak may lie on the other side of the end of a bin
 */
export function compareWithBrute(
  summary: MotionSummary,
  brute: BruteMotion,
  times: { readonly from: number; readonly until: number; readonly give: number },
  slack: number,
): Compared[] {
  const binFrames = (summary.turnSeconds / 64) * brute.gridRate;
  const rowOf = (actuals: Float64Array, signal: Endless, step: number, dilation: number) => {
    const [actual, expected]: [number[], number[]] = [[], []];
    for (const [index, value] of actuals.entries()) {
      const [from, until] = [index * step, (index + 1) * step];
      if (from < times.from * brute.gridRate || until > times.until * brute.gridRate) continue;
      const give = times.give * brute.gridRate;
      const span = { from: from - dilation, until: until + dilation, give };
      actual.push(value);
      expected.push(expectedMaximum(signal, span, value));
    }
    return { actual, expected };
  };
  const bins = FIELDS.map((name) => {
    const dilation = name === 'outward' || name === 'inward' ? slack : 0;
    const kind = 'displacement' as const;
    return { name, kind, ...rowOf(summary[name], brute[name], binFrames, dilation) };
  });
  const walls = (['left', 'right'] as const).flatMap((wall) =>
    (['velocity', 'acceleration'] as const).map((kind) => {
      const row = summary[wall][`${kind}Peak`];
      return { name: `${wall} ${kind}`, kind, ...rowOf(row, brute[kind][wall], 16 * binFrames, 0) };
    }),
  );
  return [...bins, ...walls];
}
