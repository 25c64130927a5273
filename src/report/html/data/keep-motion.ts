import type { MotionSummary, WallMotion } from '../../../analysis/motion.js';
import { movedWall } from '../../../model/moved-wall.js';
import { coarseLift, contactMask } from './contact-lift.js';
import { type BinMask, binsOf, decidingBins, eitherMask, hullBins } from './deciding-bins.js';
import { largestOf } from './filled-row.js';
import type { KeptBins, KeptMotion, KeptWall } from './kept-motion.js';
import { classOf, type LeastAsked } from './least-asked.js';
import { movedWallCode } from './moved-wall-code.js';
import { pooledHistogram } from './pooled-histogram.js';
import { lengthSteps, numberSteps } from './rounded.js';

/** What a page keeps of a motion summary. @param asked what no histogram is asked under */
export function keepMotion(motion: MotionSummary, asked: LeastAsked): KeptMotion {
  const loose = decidingBins(motion.approachLoose);
  const near = eitherMask(loose, hullBins(motion.approach));
  const lift = hullBins(motion.lift);
  const most = (row: Float64Array) => Int32Array.from(largestOf(row), lengthSteps);
  const { lowBand } = motion;
  const least = {
    edgeVelocity: classOf(asked.edgeVelocity),
    acceleration: classOf(asked.acceleration),
  };
  const wall = (of: WallMotion): KeptWall => ({
    velocityPeak: Int32Array.from(of.velocityPeak, numberSteps),
    accelerationPeak: Int32Array.from(of.accelerationPeak, numberSteps),
    velocityMeanSquare: Int32Array.from(of.velocityMeanSquare, numberSteps),
    accelerationMeanSquare: Int32Array.from(of.accelerationMeanSquare, numberSteps),
    edgeVelocity: pooledHistogram(of.edgeVelocityHistogram, least.edgeVelocity),
    acceleration: pooledHistogram(of.accelerationHistogram, least.acceleration),
  });
  return {
    leastClasses: least,
    approachLoose: keptBins(motion.approachLoose, loose),
    approach: keptBins(motion.approach, near),
    lift: keptBins(motion.lift, lift),
    sink: keptBins(motion.sink, hullBins(motion.sink)),
    movedWalls: movedWalls(motion, loose),
    contactLift: coarseLift(motion, contactMask(loose, lift)),
    lateralMost: most(motion.lateral),
    outwardMost: most(motion.outward),
    inwardMost: most(motion.inward),
    left: wall(motion.left),
    right: wall(motion.right),
    strongestFrequency: Int32Array.from(lowBand.strongestFrequency, numberSteps),
    verticalAmplitude: Int32Array.from(lowBand.verticalAmplitude, lengthSteps),
  };
}

function keptBins(row: Float64Array, mask: BinMask): KeptBins {
  const steps = new Int32Array(row.length);
  for (const bin of binsOf(mask)) steps[bin] = lengthSteps(row[bin] ?? 0);
  return { mask, steps };
}

function movedWalls(motion: MotionSummary, mask: BinMask): Int32Array {
  const codes = new Int32Array(motion.approachLoose.length);
  for (const bin of binsOf(mask)) codes[bin] = movedWallCode(movedWall(motion, bin));
  return codes;
}
