import { frameBytes, type SampleFormat } from '../sample-format.js';
import type { Kernel } from './load-kernel.js';

/** Where a kernel takes frames from: as many as it takes at a time. */
export function sourceRoom(kernel: Kernel, format: SampleFormat): Uint8Array<ArrayBuffer> {
  const capacity = kernel.SOURCE_FRAMES.value * frameBytes(format);
  return new Uint8Array(kernel.memory.buffer, kernel.sourceBytes.value, capacity);
}

/**
 * Pushes raw frames through a kernel, as many at a time as it has room for.
 * @param frames may lie in `sourceRoom`; what it has at its start is not copied
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
  const room = sourceRoom(kernel, format);
  for (let at = 0; at < frames.length; at += room.length) {
    const part = frames.subarray(at, at + room.length);
    const isThere = part.buffer === room.buffer && part.byteOffset === room.byteOffset;
    if (!isThere) room.set(part);
    const unfit = kernel.push(part.length);
    if (unfit >= 0) return at / size + unfit;
    take();
  }
  return -1;
}
