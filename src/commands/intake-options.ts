import * as z from 'zod';
import { checkTogether, forecastSchema } from './forecast-options.js';

/** What the parser makes of the options of `intake`. */
const optionsSchema = forecastSchema
  .pick({
    filesFrom: true,
    allowEmpty: true,
    follow: true,
    profile: true,
    discovery: true,
    disc: true,
    rpm: true,
    level: true,
    pitch: true,
    width: true,
    elliptical: true,
    planner: true,
    units: true,
    json: true,
    ndjson: true,
    details: true,
    quiet: true,
    jobs: true,
  })
  .extend({
    rules: z.string().optional(),
    junit: z.string().optional(),
    watch: z.string().optional(),
    out: z.string().optional(),
    settle: z.number().optional(),
    failOn: z.enum(['note', 'caution', 'fault', 'never']),
  });

export type IntakeOptions = z.infer<typeof optionsSchema>;

/** Gives the options their types and checks what no single one can. */
export function intakeOptions(given: unknown): IntakeOptions {
  const options = optionsSchema.parse(given);
  checkTogether({ ...options, quarters: false });
  return options;
}
