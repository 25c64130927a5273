import { frameBytes, type SampleFormat } from '../sample-format.js';
import type { Kernel } from './load-kernel.js';

/**
 * Pushes raw frames through a kernel, as many at a time as it has room for.
 * @param take called after each push, before the kernel's tables could overflow
 * @returns the first unfit frame, counted from the first of these; −1 if all are fit
 */
export function feedKernel(
  kernel: Kernel,
  format: SampleFormat,
  frames: Uint8Array,
  take: () => void,
): number {
  const size = frameBytes(format);
  const capacity = kernel.SOURCE_FRAMES.value * size;
  for (let at = 0; at < frames.length; at += capacity) {
    const part = frames.subarray(at, at + capacity);
    new Uint8Array(kernel.memory.buffer, kernel.sourceBytes.value, part.length).set(part);
    const unfit = kernel.push(part.length);
    if (unfit >= 0) return at / size + unfit;
    take();
  }
  return -1;
}
