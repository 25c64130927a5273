import * as z from 'zod';
import { UsageError } from '../errors.js';
import { ASKED_ONCE } from '../profile/asked-once.js';
import { PLANNERS } from '../settings.js';
import { cornerOption } from './corner-option.js';

/** Levels that a side can be asked for; far outside of what is cut. */
const LEVEL = { from: -40, to: 20 };

/** What the parser makes of the options of `forecast`. */
export const forecastSchema = z.strictObject({
  filesFrom: z.string().optional(),
  allowEmpty: z.boolean().default(false),
  follow: z.boolean().default(false),
  profile: z.string().optional(),
  discovery: z.boolean(),
  disc: z.number().optional(),
  rpm: z.number().optional(),
  level: z.number().default(0),
  pitch: z.string().optional(),
  width: z.string().optional(),
  elliptical: cornerOption,
  planner: z.enum(PLANNERS),
  units: z.enum(['metric', 'us']),
  json: z.boolean().default(false),
  ndjson: z.boolean().default(false),
  quarters: z.boolean().default(false),
  scale: z.boolean().default(false),
  details: z.boolean().default(false),
  brief: z.boolean().default(false),
  commonLevel: z.boolean().default(false),
  against: z.string().optional(),
  table: z.string().optional(),
  csv: z.string().optional(),
  markers: z.string().optional(),
  cue: z.string().optional(),
  client: z.string().optional(),
  html: z.string().optional(),
  cutsheet: z.string().optional(),
  reel: z.string().optional(),
  saveMotion: z.string().optional(),
  quiet: z.boolean().default(false),
  jobs: z.int().positive().optional(),
  failOn: z.enum(['note', 'caution', 'fault']).optional(),
});

export type ForecastOptions = z.infer<typeof forecastSchema>;

/** The options that decide how results are told, and where. */
export type ReportOptions = Pick<
  ForecastOptions,
  | 'units'
  | 'json'
  | 'ndjson'
  | 'quarters'
  | 'scale'
  | 'details'
  | 'brief'
  | 'commonLevel'
  | 'table'
  | 'csv'
  | 'markers'
  | 'cue'
  | 'client'
  | 'html'
  | 'cutsheet'
  | 'reel'
  | 'saveMotion'
>;

/** The options that decide on the profile; every command that has one takes them. */
export type ProfileOptions = Pick<
  ForecastOptions,
  'profile' | 'discovery' | 'disc' | 'rpm' | 'pitch' | 'width' | 'elliptical'
>;

/** Gives the options their types and checks what no single one can. */
export function forecastOptions(options: unknown): ForecastOptions {
  const parsed = forecastSchema.parse(options, ASKED_ONCE);
  checkTogether(parsed);
  return parsed;
}

/** @throws UsageError for what is wrong but no single option's fault, or out of its range */
export function checkTogether({
  level = 0,
  quarters,
  json,
  ndjson,
  details = false,
  brief = false,
  scale = false,
  commonLevel = false,
  against,
}: Pick<ForecastOptions, 'quarters' | 'json' | 'ndjson'> & {
  readonly level?: number | undefined;
  readonly details?: boolean;
  readonly brief?: boolean;
  readonly scale?: boolean;
  readonly commonLevel?: boolean;
  readonly against?: string | undefined;
}): void {
  if (level < LEVEL.from || level > LEVEL.to) {
    throw new UsageError(`--level: found ${level}, expected ${LEVEL.from} to ${LEVEL.to} dB`);
  }
  for (const [option, isGiven] of [
    ['--details', details],
    ['--brief', brief],
  ] as const) {
    if (isGiven && (json || ndjson))
      throw new UsageError(`${option}: is for the text, not for JSON`);
  }
  if (scale && (details || commonLevel || against !== undefined)) {
    throw new UsageError(
      '--scale: takes no --details, --common-level or --against; run it by itself',
    );
  }
  if (brief && against !== undefined) {
    throw new UsageError('--brief: leaves out what --against is for; give one of them');
  }
  if (quarters && !json && !ndjson) {
    throw new UsageError('--quarters: its columns are in the JSON; add --json or --ndjson');
  }
}

/** What the options set of a profile, under the profile's names. */
export function profileFlags(options: ProfileOptions): Record<string, unknown> {
  const flags = {
    disc: options.disc,
    rpm: options.rpm,
    basePitch: options.pitch,
    baseWidth: options.width,
    ellipticalHz: options.elliptical,
  };
  return Object.fromEntries(Object.entries(flags).filter(([, value]) => value !== undefined));
}
