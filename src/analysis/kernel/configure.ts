import type { Settings } from '../../settings.js';
import {
  type BandLimit,
  FIRST_HALVING_TAPS,
  LEAD_BASE_FRAMES,
  LEAD_FRAMES,
} from '../band-limit.js';
import { designHighPass } from '../biquad.js';
import { SAMPLE_LIMIT } from '../convert-samples.js';
import { LOW_BAND_DECIMATION } from '../decimate.js';
import { ACCELERATION_CLASSES, LOWEST_CLASS, ROOT_TWO_CLASSES } from '../histogram.js';
import { INTERPOLATION_TABLE, interpolationTaps } from '../interpolate.js';
import { LEAST_DIFFERENCE } from '../jumps.js';
import { designKWeighting, pairedTaps } from '../k-weighting.js';
import { binGains, HANN, WINDOW_FRAMES } from '../low-windows.js';
import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../motion.js';
import { designMotionFilter } from '../motion-filter.js';
import { fullScale } from '../program-checks.js';
import { fullScaleVelocity, wiringOf } from '../program-level.js';
import type { SampleFormat } from '../sample-format.js';
import { leastSilentFrames } from '../silent-runs.js';
import { binFrames, type SpiralClock } from '../spiral-clock.js';
import type { Kernel } from './load-kernel.js';

/** Cosine and sine of a turn in as many steps as a window of the low band has frames. */
const TURNS = Float64Array.from({ length: 2 * WINDOW_FRAMES }, (_, n) => {
  const angle = (2 * Math.PI * (n >> 1)) / WINDOW_FRAMES;
  return n % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
});

/** Hands a kernel at rest its coefficients and lets it take the lead's silence. */
export function configureKernel(
  kernel: Kernel,
  format: SampleFormat,
  frames: number,
  settings: Settings,
  limit: BandLimit,
  clock: SpiralClock,
): void {
  const { encoding, bitDepth, channels } = format;
  const isFloat = encoding === 'float' ? 1 : 0;
  kernel.setSource(isFloat, bitDepth, channels, fullScale(format), SAMPLE_LIMIT);
  kernel.setClasses(LOWEST_CLASS + ROOT_TWO_CLASSES, LOWEST_CLASS + ACCELERATION_CLASSES);
  kernel.setJumps(LEAST_DIFFERENCE);
  kernel.setSilence(leastSilentFrames(format.sampleRate));
  kernel.setClock(
    clock.turnFrames,
    clock.slackFrames,
    binFrames(clock),
    LEAD_FRAMES - clock.firstFrame,
    clock.firstQuarter * BINS_PER_QUARTER,
  );
  const wiring = wiringOf(settings);
  kernel.setWiring(wiring.swap ? 1 : 0, wiring.leftGain, wiring.rightGain);
  setFilters(kernel, settings, limit, clock);
  setLowBand(kernel, settings, clock);
  const programBase = Math.ceil(frames / 2 ** limit.halvings);
  kernel.start(limit.halvings, LEAD_BASE_FRAMES, programBase, limit.baseRate / 10);
}

function setFilters(
  kernel: Kernel,
  settings: Settings,
  limit: BandLimit,
  clock: SpiralClock,
): void {
  writeFourfold(kernel, kernel.firstHalvingTaps.value, FIRST_HALVING_TAPS);
  writeFourfold(kernel, kernel.bandEndTaps.value, limit.bandEndTaps);
  kernel.setBandEnd(limit.bandEndTaps.length);
  const corner = settings.subsonicHz / settings.speedFactor;
  const filter = designMotionFilter(clock.rate, corner, fullScaleVelocity(settings));
  const recursion = [...filter.zeros, ...filter.poles, ...filter.skips];
  writeDoubled(kernel, kernel.recursionTaps.value, recursion);
  writeFourfold(kernel, kernel.stepTaps.value, filter.stepTaps);
  kernel.setStepPairs(filter.stepTaps.length);
  writeFourfold(kernel, kernel.displacementTaps.value, filter.displacement);
  writeDoubled(kernel, kernel.displacementWideTaps.value, filter.displacement);
  const derivatives = [...filter.velocity, ...filter.acceleration];
  writeFourfold(kernel, kernel.derivativeTaps.value, derivatives);
  const [shelf, lowCut] = designKWeighting(limit.baseRate);
  const lowTaps = pairedTaps(lowCut);
  const sections = pairedTaps(shelf).flatMap((tap, n) => [tap, tap, lowTaps[n]!, lowTaps[n]!]);
  floatsAt(kernel, kernel.weightingSections.value, sections.length).set(sections);
  if (settings.ellipticalHz !== null) {
    const ellipticalCorner = settings.ellipticalHz / settings.speedFactor;
    const { b0, b1, b2, a1, a2 } = designHighPass(
      settings.ellipticalOrder,
      ellipticalCorner,
      limit.baseRate,
    );
    kernel.setElliptical(b0, b1, b2, a1, a2);
  }
  numbersAt(kernel, kernel.interpolationTable.value, INTERPOLATION_TABLE.length).set(
    INTERPOLATION_TABLE,
  );
  const delays = [0, clock.slackFrames, -clock.slackFrames].flatMap((slip) => {
    const delay = clock.turnFrames + slip;
    return [...interpolationTaps(Math.ceil(delay) - delay)];
  });
  numbersAt(kernel, kernel.delayTaps.value, delays.length).set(delays);
}

function setLowBand(kernel: Kernel, settings: Settings, clock: SpiralClock): void {
  const gains = binGains(settings.lowBandHz, clock.rate / LOW_BAND_DECIMATION);
  numbersAt(kernel, kernel.lowGains.value, gains.length).set(gains);
  numbersAt(kernel, kernel.lowWindow.value, WINDOW_FRAMES).set(HANN);
  numbersAt(kernel, kernel.lowTurns.value, TURNS.length).set(TURNS);
  kernel.setLowBand(
    LEAD_FRAMES / LOW_BAND_DECIMATION,
    clock.firstFrame / LOW_BAND_DECIMATION,
    clock.turnFrames / LOW_BAND_DECIMATION / QUARTERS_PER_TURN,
    clock.firstQuarter,
    gains.length - 1,
  );
}

/** Writes every number into both lanes of a vector. */
function writeDoubled(kernel: Kernel, address: number, numbers: ArrayLike<number>): void {
  const out = numbersAt(kernel, address, 2 * numbers.length);
  for (let n = 0; n < numbers.length; n++) out.fill(numbers[n]!, 2 * n, 2 * n + 2);
}

/** Writes every number, rounded, into all four lanes of a vector. */
function writeFourfold(kernel: Kernel, address: number, numbers: ArrayLike<number>): void {
  const out = floatsAt(kernel, address, 4 * numbers.length);
  for (let n = 0; n < numbers.length; n++) out.fill(numbers[n]!, 4 * n, 4 * n + 4);
}

/** Numbers of the kernel's memory, as a view that holds until the kernel allocates. */
export function numbersAt(kernel: Kernel, address: number, count: number): Float64Array {
  return new Float64Array(kernel.memory.buffer, address, count);
}

function floatsAt(kernel: Kernel, address: number, count: number): Float32Array {
  return new Float32Array(kernel.memory.buffer, address, count);
}
