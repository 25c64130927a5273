import * as z from 'zod';
import { UsageError } from '../errors.js';
import { checkTogether, forecastSchema } from './forecast-options.js';

/** Levels that a base pitch can be wanted for, dB. */
const WANT = { from: -40, to: 20 };

/** What the parser makes of the options of `fit`. */
const optionsSchema = forecastSchema
  .pick({
    filesFrom: true,
    allowEmpty: true,
    follow: true,
    profile: true,
    discovery: true,
    disc: true,
    rpm: true,
    pitch: true,
    width: true,
    elliptical: true,
    planner: true,
    units: true,
    json: true,
    details: true,
    html: true,
    reel: true,
    quiet: true,
    jobs: true,
    failOn: true,
  })
  .extend({ level: z.number().optional(), want: z.number().optional() });

export type FitOptions = z.infer<typeof optionsSchema>;

/** Gives the options their types and checks what no single one can. */
export function fitOptions(given: unknown): FitOptions {
  const options = optionsSchema.parse(given);
  const { level, want } = options;
  checkTogether({ level, quarters: false, json: options.json, ndjson: false });
  if (want !== undefined && (want < WANT.from || want > WANT.to)) {
    throw new UsageError(`--want: found ${want}, expected ${WANT.from} to ${WANT.to} dB`);
  }
  return options;
}
