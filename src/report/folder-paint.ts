import type { ChalkInstance } from 'chalk';
import type { Verdict } from '../model/forecast-types.js';

/** A verdict's colour, beside the word that says the same. */
export function paintVerdict(verdict: Verdict, paint: ChalkInstance): ChalkInstance {
  switch (verdict) {
    case 'fault':
      return paint.bold.red;
    case 'caution':
      return paint.bold.yellow;
    case 'clear':
      return paint.green;
  }
}
