import { emptyHistogram } from './histogram.js';
import { addJumps } from './jump-list.js';
import { HISTOGRAM_CLASSES, type Histogram, type LowBand, type WallMotion } from './motion.js';
import type { BinMaxima, PartMotion } from './part-motion.js';
import { addSums } from './program-checks.js';

/**
 * Several parts as one.
 * @param parts at least one, in their order, each where the one before it ends, else a RangeError
 */
export function appendParts(parts: readonly PartMotion[]): PartMotion {
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
    bins: appendBins(parts.map(({ bins }) => bins)),
    left: appendWalls(parts.map(({ left }) => left)),
    right: appendWalls(parts.map(({ right }) => right)),
    lowBand: appendLowBands(parts.map(({ lowBand }) => lowBand)),
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

function appendBins(bins: readonly BinMaxima[]): BinMaxima {
  return {
    approach: append(bins.map(({ approach }) => approach)),
    approachLoose: append(bins.map(({ approachLoose }) => approachLoose)),
    lift: append(bins.map(({ lift }) => lift)),
    sink: append(bins.map(({ sink }) => sink)),
    lateral: append(bins.map(({ lateral }) => lateral)),
    outward: append(bins.map(({ outward }) => outward)),
    inward: append(bins.map(({ inward }) => inward)),
  };
}

function appendWalls(walls: readonly WallMotion[]): WallMotion {
  return {
    velocityPeak: append(walls.map(({ velocityPeak }) => velocityPeak)),
    accelerationPeak: append(walls.map(({ accelerationPeak }) => accelerationPeak)),
    velocityMeanSquare: append(walls.map(({ velocityMeanSquare }) => velocityMeanSquare)),
    accelerationMeanSquare: append(
      walls.map(({ accelerationMeanSquare }) => accelerationMeanSquare),
    ),
    edgeVelocityHistogram: appendHistograms(
      walls.map(({ edgeVelocityHistogram }) => edgeVelocityHistogram),
    ),
    accelerationHistogram: appendHistograms(
      walls.map(({ accelerationHistogram }) => accelerationHistogram),
    ),
  };
}

function appendHistograms(histograms: readonly Histogram[]): Histogram {
  const quarters = histograms.reduce((sum, { topClass }) => sum + topClass.length, 0);
  const all = emptyHistogram(quarters);
  let at = 0;
  for (const { topClass, counts } of histograms) {
    all.topClass.set(topClass, at);
    all.counts.set(counts, at * HISTOGRAM_CLASSES);
    at += topClass.length;
  }
  return all;
}

function appendLowBands(bands: readonly LowBand[]): LowBand {
  return {
    correlation: append(bands.map(({ correlation }) => correlation)),
    phase: append(bands.map(({ phase }) => phase)),
    verticalShare: append(bands.map(({ verticalShare }) => verticalShare)),
    strongestFrequency: append(bands.map(({ strongestFrequency }) => strongestFrequency)),
    verticalAmplitude: append(bands.map(({ verticalAmplitude }) => verticalAmplitude)),
    lateralAmplitude: append(bands.map(({ lateralAmplitude }) => lateralAmplitude)),
  };
}
