import * as z from 'zod';
import { SOUND_CONTAINERS } from '../analysis/sound-file.js';
import { length, numberIn, oneOf } from '../profile/notation.js';
import { INTAKE_IDS } from './broken-rule.js';

const RULES_TEXT = 'expected { … } with rules in it, such as { "bitDepths": [24] }';
const RATES_TEXT = 'expected a list of sample rates in Hz, such as [44100, 96000]';
const DEPTHS_TEXT = 'expected a list of bit depths and "float", such as [16, 24, "float"]';
const CONTAINERS_TEXT = 'expected a list of containers, such as ["WAV", "FLAC"]';
const LONGEST_TEXT =
  'expected a list of longest sides, such as [{ "disc": 12, "rpm": 33, "minutes": 22 }]';
const SILENCE_TEXT = 'expected "least", "most" or both, in seconds, such as { "least": 0.5 }';
const NAME_TEXT = 'expected a regular expression for whole names, such as "[A-Z]+-[0-9]+\\\\.wav"';
const SEVERITY_TEXT =
  'expected severities by the ids of findings, such as { "mono": "ignore", "echo-risk": "caution" }';

/** What a house may say the severity of: findings of files, and of a folder. */
const RULED_IDS = [...INTAKE_IDS, 'mixed-formats'] as const;

/** No file name is longer than 255 bytes; a pattern that is longer than this is a mistake. */
const LONGEST_NAME_PATTERN = 1000;

/** Has what is no object refused in words of ours, not the library's. */
function noObject(text: string) {
  return {
    error: ({ code }: { readonly code?: string }) => (code === 'invalid_type' ? text : undefined),
  };
}

const longestSchema = z.strictObject(
  {
    disc: oneOf([12, 10, 7]).describe('Nominal diameter of the disc, inches.'),
    rpm: numberIn(10, 100).describe('33 means 33⅓; measured speeds up to 2 % off are meant too.'),
    minutes: numberIn(0.1, 120).describe('The longest that a side may be.'),
    fromLevelDb: numberIn(-40, 20)
      .describe('Only for sides that are planned at this level or louder; left out: at any.')
      .optional(),
  },
  noObject(LONGEST_TEXT),
);

const silenceSchema = z
  .strictObject(
    {
      least: numberIn(0, 600).describe('Seconds.').optional(),
      most: numberIn(0, 600).describe('Seconds.').optional(),
    },
    noObject(SILENCE_TEXT),
  )
  .refine(({ least, most }) => least !== undefined || most !== undefined, { error: SILENCE_TEXT })
  .refine(({ least, most }) => least === undefined || most === undefined || least <= most, {
    error: 'expected "least" to be no more than "most"',
  });

function listOf<T extends z.ZodType>(entry: T, error: string) {
  return z.array(entry, { error }).min(1, { error });
}

/** A house's own rules for arriving files. */
export const rulesSchema = z
  .strictObject(
    {
      sampleRates: listOf(numberIn(1000, 1_000_000), RATES_TEXT)
        .describe('Allowed, Hz.')
        .optional(),
      bitDepths: listOf(oneOf([8, 16, 24, 32, 'float']), DEPTHS_TEXT)
        .describe('Allowed bits of a sample; float: of any width.')
        .optional(),
      containers: listOf(oneOf(['WAV', ...SOUND_CONTAINERS]), CONTAINERS_TEXT)
        .describe('Allowed; WAV stands for RIFF, RF64 and BW64.')
        .optional(),
      longest: listOf(longestSchema, LONGEST_TEXT)
        .describe('Longest sides; of several that hold for a side the shortest counts.')
        .optional(),
      leastLand: length.describe('Land that what the lathe executes must leave.').optional(),
      mostVerticalLow: length
        .describe('Vertical motion of the low band, its peak where it is a sine.')
        .optional(),
      headSilence: silenceSchema.describe('Before the sound.').optional(),
      tailSilence: silenceSchema.describe('Behind the sound.').optional(),
      silenceDbfs: numberIn(-144, -20)
        .describe('Peak from which on it is sound, dBFS; -60 if left out.')
        .optional(),
      name: z
        .string({ error: NAME_TEXT })
        .min(1, { error: NAME_TEXT })
        .max(LONGEST_NAME_PATTERN, { error: `${NAME_TEXT}, of at most ${LONGEST_NAME_PATTERN}` })
        .describe('Regular expression (RE2) that the whole name of a file must match.')
        .optional(),
      severity: z
        .partialRecord(
          z.enum(RULED_IDS),
          z.enum(['ignore', 'note', 'caution', 'fault'], 'expected ignore, note, caution or fault'),
          noObject(SEVERITY_TEXT),
        )
        .describe('How grave a finding is in this house; ignore leaves it out.')
        .optional(),
    },
    noObject(RULES_TEXT),
  )
  .describe("A house's own rules for arriving files. JSON with comments.");

export type RulesFile = z.infer<typeof rulesSchema>;

/** Every field there is; one inside of another has the other's name and a point before it. */
export const KNOWN_RULES: readonly string[] = [
  ...Object.keys(rulesSchema.shape),
  ...Object.keys(longestSchema.shape).map((name) => `longest.${name}`),
  ...['headSilence', 'tailSilence'].flatMap((end) => [`${end}.least`, `${end}.most`]),
  ...RULED_IDS.map((id) => `severity.${id}`),
];
