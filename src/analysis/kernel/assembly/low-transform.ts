/** Frames of a window of the low band, and half of them; see the analysis' low-windows.ts. */
export const WINDOW_FRAMES: i32 = 1024;
const HALF: i32 = WINDOW_FRAMES / 2;
/** Bytes of a complex number of both walls: its real part, left and right, then its imaginary. */
const COMPLEX: i32 = 32;

/** The window, and cos and sin of a turn in as many steps: WINDOW_FRAMES f64, and pairs of f64. */
export const lowWindow: usize = memory.data(WINDOW_FRAMES * 8, 16);
export const lowTurns: usize = memory.data(WINDOW_FRAMES * 16, 16);

const first: usize = memory.data(HALF * COMPLEX, 16);
const second: usize = memory.data(HALF * COMPLEX, 16);
/** What is asked for of the spectrum: one number of both walls. */
export const spectrum: usize = memory.data(COMPLEX, 16);

/**
 * Begins the spectra of a window of both walls, each real: even frames as real parts, odd ones as
 * imaginary parts of half as many. Four passes of radix 4, each sorted as it goes (Stockham), leave
 * one of radix 2, which `spectrumAt` does only where it is asked.
 * @param frames f64x2, one behind the other
 */
export function transformWindow(frames: usize): void {
  for (let n = 0; n < WINDOW_FRAMES; n++) {
    const weight = v128.load64_splat(lowWindow + (<usize>n << 3));
    v128.store(first + (<usize>n << 4), f64x2.mul(weight, v128.load(frames + (<usize>n << 4))));
  }
  pass(first, second, 1);
  pass(second, first, 4);
  pass(first, second, 16);
  pass(second, first, 64);
}

/** A pass of radix 4 over sets of HALF/run numbers, which lie `run` apart. */
function pass(from: usize, to: usize, run: i32): void {
  const quarter = <usize>(HALF / 4) * COMPLEX;
  const row = <usize>run * COMPLEX;
  for (let set = 0; 4 * run * set < HALF; set++) {
    // In steps of 1/WINDOW_FRAMES of a turn, of which a number of the whole transform takes two.
    const turn = 2 * run * set;
    let at = from + <usize>set * row;
    let out = to + 4 * <usize>set * row;
    for (let n = 0; n < run; n++) {
      const aRe = v128.load(at);
      const aIm = v128.load(at, 16);
      const bRe = v128.load(at + quarter);
      const bIm = v128.load(at + quarter, 16);
      const cRe = v128.load(at + 2 * quarter);
      const cIm = v128.load(at + 2 * quarter, 16);
      const dRe = v128.load(at + 3 * quarter);
      const dIm = v128.load(at + 3 * quarter, 16);
      const acRe = f64x2.add(aRe, cRe);
      const acIm = f64x2.add(aIm, cIm);
      const bdRe = f64x2.add(bRe, dRe);
      const bdIm = f64x2.add(bIm, dIm);
      v128.store(out, f64x2.add(acRe, bdRe));
      v128.store(out, f64x2.add(acIm, bdIm), 16);
      const apartRe = f64x2.sub(aRe, cRe);
      const apartIm = f64x2.sub(aIm, cIm);
      // (b − d) times the imaginary unit.
      const turnedRe = f64x2.sub(dIm, bIm);
      const turnedIm = f64x2.sub(bRe, dRe);
      put(out + row, f64x2.sub(apartRe, turnedRe), f64x2.sub(apartIm, turnedIm), turn);
      put(out + 2 * row, f64x2.sub(acRe, bdRe), f64x2.sub(acIm, bdIm), 2 * turn);
      put(out + 3 * row, f64x2.add(apartRe, turnedRe), f64x2.add(apartIm, turnedIm), 3 * turn);
      at += COMPLEX;
      out += COMPLEX;
    }
  }
}

/** A number, turned back. */
// @ts-ignore: decorator
@inline
function put(out: usize, re: v128, im: v128, turn: i32): void {
  const cos = v128.load64_splat(lowTurns + (<usize>turn << 4));
  const sin = v128.load64_splat(lowTurns + (<usize>turn << 4), 8);
  v128.store(out, f64x2.add(f64x2.mul(cos, re), f64x2.mul(sin, im)));
  v128.store(out, f64x2.sub(f64x2.mul(cos, im), f64x2.mul(sin, re)), 16);
}

/** Puts both walls' number of a bin, 0 … HALF, into `spectrum`: the even frames' and the odd ones'. */
// @ts-ignore: decorator
@inline
export function spectrumAt(bin: i32): void {
  const half = f64x2.splat(0.5);
  const mirror = HALF - bin;
  const re = lastPass(bin, 0);
  const im = lastPass(bin, 16);
  const mirrorRe = lastPass(mirror, 0);
  const mirrorIm = lastPass(mirror, 16);
  const evenRe = f64x2.add(re, mirrorRe);
  const evenIm = f64x2.sub(im, mirrorIm);
  const oddRe = f64x2.add(im, mirrorIm);
  const oddIm = f64x2.sub(mirrorRe, re);
  const cos = v128.load64_splat(lowTurns + (<usize>bin << 4));
  const sin = v128.load64_splat(lowTurns + (<usize>bin << 4), 8);
  const turnedRe = f64x2.add(f64x2.mul(cos, oddRe), f64x2.mul(sin, oddIm));
  const turnedIm = f64x2.sub(f64x2.mul(cos, oddIm), f64x2.mul(sin, oddRe));
  v128.store(spectrum, f64x2.mul(half, f64x2.add(evenRe, turnedRe)));
  v128.store(spectrum, f64x2.mul(half, f64x2.add(evenIm, turnedIm)), 16);
}

// @ts-ignore: decorator
@inline
function lastPass(number: i32, part: usize): v128 {
  const at = first + <usize>(number & (HALF / 2 - 1)) * COMPLEX + part;
  const other = v128.load(at + HALF / 2 * COMPLEX);
  return (number & (HALF / 2)) == 0
    ? f64x2.add(v128.load(at), other)
    : f64x2.sub(v128.load(at), other);
}
