import * as z from 'zod';
import { areDefaults, profileValues } from '../profile/profile-values.js';
import { profileValuesJson } from '../report/profile-values-json.js';
import { profileValuesText } from '../report/profile-values-text.js';
import { furrowVersion } from '../version.js';
import { profileNotice, profileSources } from './choose-profile.js';
import { cornerOption } from './corner-option.js';
import { DONE } from './exit-code.js';
import { initProfile } from './init-profile.js';
import type { Run } from './run.js';
import { standardError } from './standard-error.js';

/** What the parser makes of the options of `profile`. */
const optionsSchema = z.strictObject({
  init: z.union([z.string(), z.literal(true)]).optional(),
  profile: z.string().optional(),
  discovery: z.boolean(),
  disc: z.number().optional(),
  rpm: z.number().optional(),
  pitch: z.string().optional(),
  width: z.string().optional(),
  elliptical: cornerOption,
  json: z.boolean().default(false),
  quiet: z.boolean().default(false),
});

/** Tells the values of the profile, or writes a first one, and gives the exit code. */
export async function runProfile(given: unknown, run: Run): Promise<number> {
  const options = optionsSchema.parse(given);
  const { surroundings, output } = run;
  const { stderr, isErrorTerminal } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  if (options.init !== undefined) {
    return await initProfile(options.init === true ? null : options.init, options, run, errors);
  }
  const sources = await profileSources(options, surroundings.cwd);
  const values = profileValues(sources);
  errors.notice(profileNotice(sources));
  const path = sources.file?.path ?? null;
  if (areDefaults(values)) errors.notice(defaultsWarning(path));
  await output.write(
    options.json
      ? profileValuesJson(values, { path, version: furrowVersion() })
      : profileValuesText(values, path),
  );
  return DONE;
}

function defaultsWarning(path: string | null): string {
  const remedy =
    path === null
      ? "write one with `furrow profile --init` and put the house's figures in"
      : `put the house's figures into ${path}; \`furrow profile --init -\` says which first`;
  return `warning: nothing but defaults; a forecast with them is a guess\n${remedy}`;
}
