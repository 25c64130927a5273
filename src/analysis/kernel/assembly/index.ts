// The fused pass over a program's frames, compiled to WebAssembly with SIMD. Both channels ride in
// the two lanes of a vector. src/analysis/plain-motion.ts is the readable definition of every
// number that comes out of here, and the tests hold the two against each other.
export { setSource, sourceBytes, SOURCE_FRAMES, sums, clippedRuns, firstClipFrame, identical } from './source';
export { firstHalvingTaps, bandEndTaps, setBandEnd, ultrasonicPower } from './band-limit';
export { weightingSections, stepPowers, stepCount, takeSteps } from './k-weighting';
export { truePeaks } from './true-peak';
export { filterTaps, setWiring, setElliptical, lowFrames, lowCount, takeLow } from './motion';
export { interpolationTable } from './interpolate';
export { delayTaps, displacement, displacementMask, motionEnd, setClock } from './rings';
export { binMaxima, binCount, takeBins } from './bins';
export { quarterFigures, quarterCounts, quarterCount, takeQuarters } from './walls';
export { start, push, finish } from './pass';
