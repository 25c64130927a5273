import type { Finding } from '../model/forecast-types.js';
import { DIMENSIONS } from '../model/standard-dimensions.js';

/** What is not as a standard has it, in words; value and limit as they are told. */
export function standardWords(finding: Finding, value: string, limit: string) {
  return {
    what: `Off the standard: ${subject(finding)} ${value}, ${bound(finding)} ${limit}.`,
    remedy: 'Set it to the standard, unless the plant wants it so: players rely on it.',
  };
}

function subject({ detail }: Finding): string {
  switch (DIMENSIONS.find((each) => each === detail)) {
    case 'start':
      return 'the program starts at diameter';
    case 'lead-in':
      return 'a lead-in pitch of';
    case 'band':
      return 'a marker band with a pitch of';
    case 'lead-out':
      return 'a lead-out pitch of';
    case 'finishing':
      return 'a finishing groove of diameter';
    case undefined:
      return 'a dimension of';
  }
}

function bound({ value, limit }: Finding): string {
  return (value ?? 0) < (limit ?? 0) ? 'at least' : 'at most';
}
