import * as z from 'zod';
import { UsageError } from '../errors.js';
import { checkTogether, forecastSchema } from './forecast-options.js';

/** What the parser makes of the options of `side`. */
const optionsSchema = forecastSchema
  .omit({ filesFrom: true, allowEmpty: true, against: true, cue: true, saveMotion: true })
  .extend({
    level: z.number().optional(),
    fromCues: z.string().optional(),
    order: z.boolean().default(false),
  });

export type SideOptions = z.infer<typeof optionsSchema>;

/** Gives the options their types and checks what no single one can. */
export function sideOptions(options: unknown): SideOptions {
  const parsed = optionsSchema.parse(options);
  checkTogether(parsed);
  if (parsed.client !== undefined) {
    // Its times are those of files, and what is wrong with a whole side is not one track's.
    const instead = 'give the files to furrow forecast --client';
    throw new UsageError(`--client: the letter goes by files, a side is none; ${instead}`);
  }
  return parsed;
}
