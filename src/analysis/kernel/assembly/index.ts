// The fused pass over a program's frames, compiled to WebAssembly with SIMD. Frames are f32, left
// and right, two of them in a vector. src/analysis/plain-motion.ts is the readable definition of
// every number that comes out of here, and the tests hold the two against each other.
export { setSource, sourceBytes, SOURCE_FRAMES, sums, identical } from './source';
export { clippedRuns, firstClipFrame, longestClip, longestClipFrame } from './clipping';
export { jumps, jumpCount, setJumps } from './jumps';
export { silentRuns, silentCount, silentHead, silentTail, setSilence } from './silence';
export { firstHalvingTaps, bandEndTaps, setBandEnd, ultrasonicPower } from './band-limit';
export { weightingSections, stepPowers, stepCount, takeSteps } from './k-weighting';
export { truePeaks } from './true-peak';
export { stepTaps, setStepPairs } from './doubling';
export { recursionTaps, setWiring, setElliptical } from './recursion';
export { displacementTaps, displacementWideTaps } from './displace';
export { derivativeTaps } from './derive';
export { lowTurns, lowWindow } from './low-transform';
export {
  lowGains, lowQuarterCount, lowQuarters, setLowBand, takeLowQuarters,
} from './low-windows';
export { interpolationTable } from './interpolate';
export { delayTaps, displacement, displacementMask, memoryUsed, motionEnd, setClock } from './rings';
export { binCount } from './bins';
export {
  binColumns, countColumns, figureColumns, handedBins, handedQuarters, handOver, setClasses,
  topColumns,
} from './hand-over';
export { start, push, finish } from './pass';
