import { forecastAll, type SideRun } from '../forecast-all.js';
import type { Request } from '../forecast-side.js';
import type { Failure } from '../report/failure.js';
import { intakeRequest } from './intake-request.js';
import { type IntakeResult, intakeResult } from './intake-result.js';
import type { Rules } from './rules.js';

export { kernelIsAvailable } from '../forecast-all.js';

/** How the files of a run are to be judged. */
export interface IntakeRun extends Omit<SideRun, 'requestFor'> {
  readonly request: Request;
  readonly rules: Rules;
}

/**
 * The judgements of files, in their order, each as soon as its turn has come; what has failed
 * already, or fails, keeps its place among them.
 */
export async function* intakeAll(
  inputs: readonly (string | Failure)[],
  { request, rules, ...run }: IntakeRun,
): AsyncGenerator<IntakeResult | Failure, void, undefined> {
  const asked = intakeRequest(request, rules);
  const results = forecastAll(inputs, { ...run, requestFor: () => asked });
  for (const input of inputs) {
    const { value: result } = await results.next();
    if (result === undefined) throw new Error('an input without a result');
    if ('code' in result) yield result;
    else if (typeof input === 'string') yield intakeResult(input, result, rules);
  }
}
