import type { Request } from '../forecast-side.js';
import type { Rules } from './rules.js';

/** A request with what the rules need to know of a side's sound besides. */
export function intakeRequest(request: Request, rules: Rules): Request {
  const { headSilence, tailSilence, silenceDbfs } = rules;
  return headSilence === null && tailSilence === null ? request : { ...request, silenceDbfs };
}
