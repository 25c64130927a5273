/** How likely the bits are that are coded at each of a number of places; learned from those before. */
export interface Chances {
  /** Of a 1, in 2⁻¹⁶. */
  readonly ofOne: Uint16Array;
  /** How many bits were seen, up to the last of PACE. */
  readonly seen: Uint8Array;
}

/**
 * Codes bits, each in as little room as it is likely. Writing and reading are told apart by the
 * coder alone: `code` gives back the bit it writes, or the one it reads whatever it is given.
 * Source: Martin, Range encoding, 1979; carry and bytes as in the LZMA format, from memory.
 */
export interface BitCoder {
  /** A bit whose chance is learned at a place. */
  readonly learned: (chances: Chances, place: number, bit: number) => number;
  /** So many bits, up to 16, each as likely 0 as 1, as one number. */
  readonly even: (bits: number, value: number) => number;
}

const CHANCE_BITS = 16;
const ONE = 2 ** CHANCE_BITS;
/** Neither 0 nor 1 may become impossible. */
const LEAST = 32;
/** By which share a chance moves towards a bit, 1/PACE: the more bits were seen, the less. */
const PACE = Array.from({ length: 128 }, (_, seen) => seen + 1.5);

/** The range is kept over this, so that every chance has some of it. */
const LEAST_RANGE = 2 ** 24;
const WHOLE_RANGE = 2 ** 32;

export function chances(places: number): Chances {
  return { ofOne: new Uint16Array(places).fill(ONE / 2), seen: new Uint8Array(places) };
}

/** Part of a range that belongs to a 1. */
function partOf(range: number, { ofOne }: Chances, place: number): number {
  return (range >>> CHANCE_BITS) * (ofOne[place] ?? 0);
}

/** In whole numbers, which every machine rounds alike. */
function learn({ ofOne, seen }: Chances, place: number, bit: number): void {
  const chance = ofOne[place] ?? 0;
  const times = seen[place] ?? 0;
  const moved = chance + Math.trunc((bit * ONE - chance) / (PACE[times] ?? 1));
  ofOne[place] = Math.min(ONE - LEAST, Math.max(LEAST, moved));
  if (times < PACE.length - 1) seen[place] = times + 1;
}

/** Writes; `finish` gives all bytes and ends it. */
export function rangeEncoder(): BitCoder & { readonly finish: () => Uint8Array } {
  const bytes: number[] = [];
  let low = 0;
  let range = WHOLE_RANGE - 1;
  // The last byte, and how many of 255 follow it, to which a carry may yet come.
  let last = 0;
  let waiting = 0;

  const shift = () => {
    if (low < 0xff_00_00_00 || low >= WHOLE_RANGE) {
      const carry = low >= WHOLE_RANGE ? 1 : 0;
      bytes.push((last + carry) & 255);
      for (; waiting > 0; waiting--) bytes.push((255 + carry) & 255);
      last = Math.floor(low / LEAST_RANGE) & 255;
    } else {
      waiting += 1;
    }
    low = (low % LEAST_RANGE) * 256;
  };
  const narrow = (from: number, part: number) => {
    low += from;
    range = part;
    while (range < LEAST_RANGE) {
      range *= 256;
      shift();
    }
  };
  return {
    learned: (learning, place, bit) => {
      const part = partOf(range, learning, place);
      if (bit === 1) narrow(0, part);
      else narrow(part, range - part);
      learn(learning, place, bit);
      return bit;
    },
    even: (bits, value) => {
      const part = range >>> bits;
      narrow(part * value, part);
      return value;
    },
    finish: () => {
      for (let byte = 0; byte < 5; byte++) shift();
      // The first is the byte before the first, which no carry reaches.
      return Uint8Array.from(bytes.slice(1));
    },
  };
}

/** Reads what `rangeEncoder` wrote. @throws RangeError beyond the last byte */
export function rangeDecoder(bytes: Uint8Array): BitCoder {
  let at = 0;
  const next = () => {
    const byte = bytes[at++];
    if (byte === undefined) throw new RangeError('the data of the page break off');
    return byte;
  };
  // Fields, as variables of a closure that pass 31 bits are allocated anew at each change.
  const state = { range: WHOLE_RANGE - 1, code: 0 };
  for (let byte = 0; byte < 4; byte++) state.code = state.code * 256 + next();

  const narrow = (from: number, part: number) => {
    let code = state.code - from;
    let range = part;
    while (range < LEAST_RANGE) {
      range *= 256;
      code = code * 256 + next();
    }
    state.code = code;
    state.range = range;
  };
  return {
    learned: (learning, place) => {
      const part = partOf(state.range, learning, place);
      const bit = state.code < part ? 1 : 0;
      if (bit === 1) narrow(0, part);
      else narrow(part, state.range - part);
      learn(learning, place, bit);
      return bit;
    },
    even: (bits) => {
      const part = state.range >>> bits;
      const value = Math.min(2 ** bits - 1, Math.floor(state.code / part));
      narrow(part * value, part);
      return value;
    },
  };
}
