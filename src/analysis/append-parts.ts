import { addJumps } from './jump-list.js';
import { emptyRows, rowsBetween, setRows } from './motion-rows.js';
import type { MotionRows, PartFigures, PartMotion } from './part-motion.js';
import { addSums } from './program-checks.js';
import { ownMemory } from './row-memory.js';

/**
 * Several parts as one.
 * @param parts at least one, in their order, each where the one before it ends, else a RangeError
 */
export function appendParts(parts: readonly PartMotion[]): PartMotion {
  return { ...appendFigures(parts), ...appendRows(parts) };
}

/** Their figures alone, likewise. */
export function appendFigures(parts: readonly PartFigures[]): PartFigures {
  const [first, last] = [parts[0], parts.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('no part to append');
  for (const [index, { part }] of parts.slice(1).entries()) {
    const { endQuarter, endFrame } = parts[index]!.part;
    if (part.firstQuarter !== endQuarter || part.firstFrame !== endFrame) {
      throw new RangeError(`a part begins at quarter ${part.firstQuarter}, not at ${endQuarter}`);
    }
  }
  return {
    part: {
      ...first.part,
      endQuarter: last.part.endQuarter,
      endFrame: last.part.endFrame,
      readUntil: last.part.readUntil,
    },
    sums: parts.map(({ sums }) => sums).reduce(addSums),
    truePeak: perChannel(
      parts.map(({ truePeak }) => truePeak),
      Math.max,
    ),
    ultrasonicPower: perChannel(
      parts.map(({ ultrasonicPower }) => ultrasonicPower),
      (sum, power) => sum + power,
    ),
    stepPowers: append(parts.map(({ stepPowers }) => stepPowers)),
    jumps: parts.map(({ jumps }) => jumps).reduce(addJumps),
  };
}

/** Their rows alone, copied. */
export function appendRows(parts: readonly PartMotion[]): MotionRows {
  const before = parts[0]?.part.firstQuarter ?? 0;
  const rows = emptyRows((parts.at(-1)?.part.endQuarter ?? before) - before, ownMemory);
  for (const motion of parts) {
    const { firstQuarter, endQuarter } = motion.part;
    setRows(rowsBetween(rows, firstQuarter - before, endQuarter - before), motion);
  }
  return rows;
}

type Pair = readonly [number, number];

function perChannel(pairs: readonly Pair[], combine: (a: number, b: number) => number): Pair {
  return pairs.reduce((a, b) => [combine(a[0], b[0]), combine(a[1], b[1])]);
}

function append(rows: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(rows.reduce((length, row) => length + row.length, 0));
  let at = 0;
  for (const row of rows) {
    all.set(row, at);
    at += row.length;
  }
  return all;
}
