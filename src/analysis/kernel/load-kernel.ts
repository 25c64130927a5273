import { readFile } from 'node:fs/promises';

/** A number that the pass keeps and the host reads. */
type Counter = { value: number };

/** What the compiled pass exports; addresses are bytes of its memory. See assembly/index.ts. */
export interface Kernel {
  readonly memory: WebAssembly.Memory;
  readonly sourceBytes: Counter;
  readonly SOURCE_FRAMES: Counter;
  readonly sums: Counter;
  readonly clippedRuns: Counter;
  readonly firstClipFrame: Counter;
  readonly longestClip: Counter;
  readonly longestClipFrame: Counter;
  readonly jumps: Counter;
  readonly jumpCount: Counter;
  readonly silentRuns: Counter;
  readonly silentCount: Counter;
  readonly silentHead: Counter;
  readonly silentTail: Counter;
  readonly identical: Counter;
  readonly firstHalvingTaps: Counter;
  readonly bandEndTaps: Counter;
  readonly ultrasonicPower: Counter;
  readonly weightingSections: Counter;
  readonly stepPowers: Counter;
  readonly stepCount: Counter;
  readonly truePeaks: Counter;
  readonly stepTaps: Counter;
  readonly recursionTaps: Counter;
  readonly displacementTaps: Counter;
  readonly displacementWideTaps: Counter;
  readonly derivativeTaps: Counter;
  readonly lowWindow: Counter;
  readonly lowTurns: Counter;
  readonly lowGains: Counter;
  readonly lowQuarters: Counter;
  readonly lowQuarterCount: Counter;
  readonly interpolationTable: Counter;
  readonly delayTaps: Counter;
  readonly displacement: Counter;
  readonly displacementMask: Counter;
  readonly motionEnd: Counter;
  readonly binCount: Counter;
  readonly binColumns: Counter;
  readonly figureColumns: Counter;
  readonly topColumns: Counter;
  readonly countColumns: Counter;
  readonly handedBins: Counter;
  readonly handedQuarters: Counter;
  setSource(float: number, bits: number, channels: number, full: number, limit: number): void;
  setClasses(lowestVelocity: number, lowestAcceleration: number): void;
  setJumps(least: number): void;
  setSilence(least: number): void;
  setBandEnd(pairs: number): void;
  setStepPairs(pairs: number): void;
  setWiring(swap: number, leftGain: number, rightGain: number): void;
  setElliptical(b0: number, b1: number, b2: number, a1: number, a2: number): void;
  setClock(
    turnFrames: number,
    slackFrames: number,
    binFrames: number,
    leadFrames: number,
    firstBin: number,
  ): void;
  setLowBand(
    lead: number,
    firstFrame: number,
    quarterFrames: number,
    firstQuarter: number,
    lastBin: number,
  ): void;
  start(halvings: number, leadBase: number, programBase: number, step: number): void;
  push(bytes: number): number;
  finish(frames: number): void;
  /** Bytes from the start of the memory on in which it may have written. */
  memoryUsed(): number;
  takeSteps(): void;
  takeLowQuarters(): void;
  handOver(): void;
}

/**
 * True where the kernel can run; false where the machine lacks its vector instructions, or the
 * process has no WebAssembly at all: then the plain definition does its work, many times slower.
 */
export async function kernelIsAvailable(): Promise<boolean> {
  return (await compiledOnce()) !== null;
}

/**
 * A pass of its own, at rest; null where none can run. Whoever is done with it gives its memory
 * back by `releaseKernel`, or forgets it.
 */
export async function loadKernel(): Promise<Kernel | null> {
  const module = await compiledOnce();
  if (module === null) return null;
  const memory = emptyMemory();
  const instance = await WebAssembly.instantiate<Kernel>(module, { env: { abort, memory } });
  return instance.exports;
}

/** Keeps a kernel's memory for the next one; the kernel must not be used again. */
export function releaseKernel(kernel: Kernel): void {
  spare ??= { memory: kernel.memory, used: kernel.memoryUsed() };
}

/** Room for the tables and for the rings of a turn at 33⅓ rpm; at less it grows. */
const MEMORY_PAGES = 128;

/**
 * Memory that no kernel uses now. A process does part after part, and what they leave is collected
 * late: three of them held 40 MB more in each thread.
 */
let spare: { readonly memory: WebAssembly.Memory; readonly used: number } | undefined;

function emptyMemory(): WebAssembly.Memory {
  if (spare === undefined) return new WebAssembly.Memory({ initial: MEMORY_PAGES });
  const { memory, used } = spare;
  spare = undefined;
  new Uint8Array(memory.buffer, 0, used).fill(0);
  return memory;
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
