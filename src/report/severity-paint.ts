import type { ChalkInstance } from 'chalk';
import type { Severity, Verdict } from '../model/forecast-types.js';

/** The colour of a severity or a verdict; the word beside it says the same. */
export function severityPaint(of: Severity | Verdict, paint: ChalkInstance): ChalkInstance {
  switch (of) {
    case 'fault':
      return paint.bold.red;
    case 'caution':
      return paint.bold.yellow;
    case 'clear':
      return paint.bold.green;
    case 'note':
      return paint.bold;
  }
}
