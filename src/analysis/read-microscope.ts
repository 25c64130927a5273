import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { isFamilyRate } from './band-limit.js';
import type { FrameSource } from './frame-source.js';
import type { EdgeTurn, HotSpotEdges } from './hot-spot-edges.js';
import { moveSegment, type SegmentMotion } from './kernel/segment.js';
import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from './motion.js';
import { settlingSeconds } from './settling.js';

/** What is kept on either side of the tightest angle; at 0.5 m/s a groove of 4 mm in all. */
const REACH: Seconds = 0.004;
/** What the band end needs of the program after a window. */
const AFTER: Seconds = 0.01;
const TURNS = [-1, 0, 1] as const satisfies readonly EdgeTurn['turnsFromSpot'][];

/**
 * Reads both edges of the turn of each hot spot and of its two neighbours, around the angle in the
 * hot spot's bin at which √2·(u_R(t) − u_L(t − T)) is largest.
 * A turn that is not cut, before the first silent turn or after the last, is left out.
 * @param settings as the analysis had them: a source may have filtered its tracks itself
 * @param hotSpots `atSeconds`: the start of a bin, program time
 * @returns null for all at a rate of neither family, which is not looked at closer
 */
export async function readMicroscope(
  source: FrameSource,
  settings: Settings,
  hotSpots: readonly { readonly atSeconds: Seconds }[],
): Promise<(HotSpotEdges | null)[]> {
  const isLooked = isFamilyRate(source.format.sampleRate);
  const edges: (HotSpotEdges | null)[] = [];
  for (const { atSeconds } of hotSpots) {
    edges.push(isLooked ? await readSpot(source, settings, atSeconds) : null);
  }
  return edges;
}

async function readSpot(
  source: FrameSource,
  settings: Settings,
  atSeconds: Seconds,
): Promise<HotSpotEdges> {
  const turn = 60 / settings.rpm;
  const bin = turn / (QUARTERS_PER_TURN * BINS_PER_QUARTER);
  const motions = new Map<EdgeTurn['turnsFromSpot'], SegmentMotion>();
  for (const turns of TURNS) {
    const from = atSeconds + turns * turn - REACH;
    const isCut = isWithinCut(source, settings, from + REACH);
    if (isCut) motions.set(turns, await readMotion(source, settings, from, bin + 2 * REACH));
  }
  const rate = motions.get(0)?.rate ?? source.format.sampleRate;
  const reach = Math.round(REACH * rate);
  const tightest = tightestFrame(motions, reach);
  const keep = (row: Float64Array) =>
    Float32Array.from(row.subarray(tightest - reach, tightest + reach + 1), (u) => Math.SQRT2 * u);
  return {
    atSeconds: atSeconds - REACH + (tightest - reach) / rate,
    secondsPerSample: 1 / rate,
    turns: [...motions].map(([turnsFromSpot, { left, right }]) => ({
      turnsFromSpot,
      inner: keep(left),
      outer: keep(right),
    })),
  };
}

/** The frame inside the bin at which this turn and the one outside it close in the most. */
function tightestFrame(
  motions: ReadonlyMap<EdgeTurn['turnsFromSpot'], SegmentMotion>,
  reach: number,
): number {
  const outer = motions.get(0)?.right ?? new Float64Array(0);
  const inner = motions.get(-1)?.left ?? new Float64Array(0);
  let tightest = reach;
  let most = Number.NEGATIVE_INFINITY;
  for (let frame = reach; frame < outer.length - reach; frame++) {
    const closing = outer[frame]! - (inner[frame] ?? 0);
    if (closing <= most) continue;
    most = closing;
    tightest = frame;
  }
  return tightest;
}

/** From the first silent turn to the last; nothing else is planned. */
function isWithinCut(
  { format, frames }: FrameSource,
  settings: Settings,
  atSeconds: Seconds,
): boolean {
  const silence = (settings.silentTurns * 60) / settings.rpm;
  const seconds = frames / format.sampleRate;
  return atSeconds >= -silence - 1e-9 && atSeconds < seconds + silence;
}

/** Displacement over a stretch of the program; silence where it has no frames. */
async function readMotion(
  source: FrameSource,
  settings: Settings,
  from: Seconds,
  length: Seconds,
): Promise<SegmentMotion> {
  const { format, frames } = source;
  const frameAt = (seconds: Seconds): number =>
    Math.min(Math.max(Math.floor(seconds * format.sampleRate), 0), frames);
  const firstFrame = frameAt(from - settlingSeconds(settings));
  const endFrame = frameAt(from + length + AFTER);
  const parts: Uint8Array[] = [];
  for await (const block of source.read({ firstFrame, endFrame })) parts.push(block.slice());
  const bytes = new Uint8Array(Buffer.concat(parts));
  const span = { from: from - firstFrame / format.sampleRate, length };
  return await moveSegment(format, bytes, settings, span);
}
