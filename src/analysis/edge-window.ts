import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { isFamilyRate } from './band-limit.js';
import type { FrameSource } from './frame-source.js';
import { moveSegment, type SegmentMotion } from './kernel/segment.js';
import { BINS_PER_QUARTER, type EdgeWindow, QUARTERS_PER_TURN } from './motion.js';
import { frameBytes } from './sample-format.js';
import { settlingSeconds } from './settling.js';

/**
 * How far from the facing place the inner edge is read, as a share of a turn: a little more than
 * the speed error that the standard allows a lathe, 0.5 % (IEC 60098:2020, 5.6).
 */
const FACING_SHARE = 0.006;

/** What the band end needs of the program after a window. */
const AFTER_SECONDS = 0.01;

/**
 * Reads the audio around a place once more and returns the two edges that face each other there.
 * @param atSeconds start of the bin that is looked at
 * @returns null at a rate of neither family, which is not looked at closer
 */
export async function readEdgeWindow(
  source: FrameSource,
  settings: Settings,
  atSeconds: Seconds,
): Promise<EdgeWindow | null> {
  if (!isFamilyRate(source.format.sampleRate)) return null;
  const turn = 60 / settings.rpm;
  const length = turn / (QUARTERS_PER_TURN * BINS_PER_QUARTER);
  const reach = FACING_SHARE * turn;
  const outer = await readEdge(source, settings, atSeconds, atSeconds + length);
  const facing = atSeconds - turn;
  const inner = await readEdge(source, settings, facing - reach, facing + length + reach);
  const { rate } = outer;
  return {
    rate,
    startSeconds: atSeconds,
    outer: outer.right.map((value) => Math.SQRT2 * value),
    inner: inner.left.map((value) => Math.SQRT2 * value),
    margin: Math.round(reach * rate),
  };
}

/** Displacement from one time to another, with silence where the program has no frames. */
async function readEdge(
  source: FrameSource,
  settings: Settings,
  from: Seconds,
  until: Seconds,
): Promise<SegmentMotion> {
  const { format, frames } = source;
  const frameAt = (seconds: Seconds): number =>
    Math.min(Math.max(Math.floor(seconds * format.sampleRate), 0), frames);
  const first = frameAt(from - settlingSeconds(settings));
  const end = frameAt(until + AFTER_SECONDS);
  const bytes = await readAll(source, first, end);
  const span = { from: from - first / format.sampleRate, length: until - from };
  return await moveSegment(format, bytes, settings, span);
}

async function readAll(
  source: FrameSource,
  firstFrame: number,
  endFrame: number,
): Promise<Uint8Array> {
  const frames = Math.max(1, endFrame - firstFrame);
  const room = new Uint8Array(frames * frameBytes(source.format));
  let filled = 0;
  for await (const block of source.read({ firstFrame, endFrame, room })) {
    // A source that can has put all of it there, at once.
    if (block.buffer !== room.buffer) room.set(block, filled);
    filled += block.length;
  }
  return room.subarray(0, filled);
}
