import { readFile } from 'node:fs/promises';

/** A number that the pass keeps and the host reads. */
type Counter = { value: number };

/** What the compiled pass exports; addresses are bytes of its memory. See assembly/index.ts. */
export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly sourceBytes: Counter;
  readonly SOURCE_FRAMES: Counter;
  readonly sums: Counter;
  readonly clippedRuns: Counter;
  readonly firstClipFrame: Counter;
  readonly identical: Counter;
  readonly firstHalvingTaps: Counter;
  readonly bandEndTaps: Counter;
  readonly ultrasonicPower: Counter;
  readonly weightingSections: Counter;
  readonly stepPowers: Counter;
  readonly stepCount: Counter;
  readonly truePeaks: Counter;
  readonly filterTaps: Counter;
  readonly lowFrames: Counter;
  readonly lowCount: Counter;
  readonly interpolationTable: Counter;
  readonly delayTaps: Counter;
  readonly displacement: Counter;
  readonly displacementMask: Counter;
  readonly motionEnd: Counter;
  readonly binMaxima: Counter;
  readonly binCount: Counter;
  readonly quarterFigures: Counter;
  readonly quarterCounts: Counter;
  readonly quarterCount: Counter;
  setSource(float: number, bits: number, channels: number, full: number, limit: number): void;
  setBandEnd(pairs: number): void;
  setWiring(swap: number, leftGain: number, rightGain: number): void;
  setElliptical(b0: number, b1: number, b2: number, a1: number, a2: number): void;
  setClock(
    turnFrames: number,
    slackFrames: number,
    binFrames: number,
    leadFrames: number,
    firstBin: number,
  ): void;
  start(halvings: number, leadBase: number, programBase: number, step: number): void;
  push(bytes: number): number;
  finish(frames: number): void;
  takeSteps(): void;
  takeLow(): void;
  takeBins(): void;
  takeQuarters(): void;
}

/**
 * True where the kernel can run; false where the machine lacks its vector instructions, or the
 * process has no WebAssembly at all: then the plain definition does its work, many times slower.
 */
export async function kernelIsAvailable(): Promise<boolean> {
  return (await compiledOnce()) !== null;
}

/** A pass of its own, at rest; null where none can run. */
export async function loadKernel(): Promise<Kernel | null> {
  const module = await compiledOnce();
  if (module === null) return null;
  const instance = await WebAssembly.instantiate<Kernel>(module, { env: { abort } });
  return instance.exports;
}

let compiled: Promise<WebAssembly.Module | null> | undefined;

/** The module is compiled once a process. */
async function compiledOnce(): Promise<WebAssembly.Module | null> {
  compiled ??= compile();
  return await compiled;
}

async function compile(): Promise<WebAssembly.Module | null> {
  if (typeof WebAssembly === 'undefined') return null;
  const bytes = await readFile(new URL('./motion-kernel.wasm', import.meta.url));
  return WebAssembly.validate(bytes) ? await WebAssembly.compile(bytes) : null;
}

function abort(): never {
  throw new Error('the motion kernel ran out of memory');
}
