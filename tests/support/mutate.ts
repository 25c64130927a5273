import { joined } from './wav-writer.js';

/** Numbers that a head may lie with. */
const EXTREMES = [0, 1, 0x7f, 0x80, 0xff, 0x7fffffff, 0x80000000, 0xfffffffe, 0xffffffff];

/**
 * A file with one to four things wrong: a bit, a byte or a number changed, a stretch cut out, told
 * twice, put elsewhere or overwritten with zeros, the end cut off or something put behind it.
 * @param next gives numbers from 0 up to 1
 */
export function mutated(bytes: Uint8Array, next: () => number): Uint8Array {
  let changed = Uint8Array.from(bytes);
  for (let left = 1 + Math.floor(4 * next()); left > 0; left--)
    changed = mutatedOnce(changed, next);
  return changed;
}

function mutatedOnce(bytes: Uint8Array, next: () => number): Uint8Array<ArrayBuffer> {
  const below = (end: number) => Math.floor(end * next());
  // Heads are where it hurts.
  const at = next() < 0.6 ? below(Math.min(bytes.length, 80)) : below(bytes.length);
  const end = Math.min(bytes.length, at + 1 + below(next() < 0.5 ? 8 : 400));
  const copy = Uint8Array.from(bytes);
  const [before, stretch, behind] = [copy.slice(0, at), copy.slice(at, end), copy.slice(end)];
  switch (below(9)) {
    case 0:
      copy[at] = (copy[at] ?? 0) ^ (1 << below(8));
      return copy;
    case 1:
      copy[at] = below(256);
      return copy;
    case 2:
    case 3: {
      const number = EXTREMES[below(EXTREMES.length)] ?? 0;
      for (let byte = 0; byte < 4 && at + byte < copy.length; byte++) {
        copy[at + byte] = number >>> (24 - 8 * byte);
      }
      return copy;
    }
    case 4:
      return copy.slice(0, at);
    case 5:
      return whole(before, behind);
    case 6:
      return whole(before, stretch, stretch, behind);
    case 7:
      return whole(before, new Uint8Array(stretch.length), behind);
    default:
      return whole(copy, stretch);
  }
}

function whole(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(joined(parts));
}
