import { UsageError } from '../errors.js';
import { fieldName } from '../profile/field-name.js';
import { issueTexts } from '../profile/issue-text.js';
import { type ProfileFile, readProfile } from '../profile/profile-file.js';
import { parseLength } from '../units.js';
import type { NamePattern } from './name-pattern.js';
import { type Rules, SILENCE_DBFS, type SilenceRule } from './rules.js';
import { KNOWN_RULES, type RulesFile, rulesSchema } from './rules-schema.js';

const KIND = 'file of rules';

/**
 * A house's rules from a file: JSON with comments.
 * @param shownPath the path as it is to be shown
 * @throws UsageError that says all that is wrong, each with its line
 */
export async function readRules(path: string, shownPath = path): Promise<Rules> {
  return await parseRules(await readProfile(path, shownPath, KIND));
}

/** The same of a file whose content is known. */
export async function parseRules(file: ProfileFile): Promise<Rules> {
  const result = rulesSchema.safeParse(file.value);
  if (!result.success) {
    const place = (path: readonly PropertyKey[]) => placeIn(file, path);
    const texts = issueTexts(result.error, file.value, KNOWN_RULES, place, 'rules');
    throw new UsageError(texts.join('\n'));
  }
  return toRules(result.data, await patternOf(result.data.name, file));
}

/** In SI. */
function toRules(rules: RulesFile, name: NamePattern | null): Rules {
  return {
    sampleRates: rules.sampleRates ?? null,
    bitDepths: rules.bitDepths ?? null,
    containers: rules.containers ?? null,
    longest: (rules.longest ?? []).map(({ disc, rpm, minutes, fromLevelDb }) => ({
      disc,
      rpm: rpm === 33 ? 100 / 3 : rpm,
      fromLevelDb: fromLevelDb ?? null,
      most: 60 * minutes,
    })),
    leastLand: metres(rules.leastLand),
    mostVerticalLow: metres(rules.mostVerticalLow),
    headSilence: silence(rules.headSilence),
    tailSilence: silence(rules.tailSilence),
    silenceDbfs: rules.silenceDbfs ?? SILENCE_DBFS,
    name,
    severity: rules.severity ?? {},
  };
}

/** The library is loaded only where there is a pattern. */
async function patternOf(text: string | undefined, file: ProfileFile): Promise<NamePattern | null> {
  if (text === undefined) return null;
  const { namePattern } = await import('./name-pattern.js');
  try {
    return namePattern(text);
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : 'unknown reason';
    const found = `found ${JSON.stringify(text)}, which is no regular expression of RE2`;
    throw new UsageError(`${placeIn(file, ['name'])}: ${found}: ${reason}`, { cause });
  }
}

function metres(text: string | undefined): number | null {
  return text === undefined ? null : parseLength(text);
}

function silence(rule: RulesFile['headSilence']): SilenceRule | null {
  return rule === undefined ? null : { least: rule.least ?? null, most: rule.most ?? null };
}

/** Such as `house.json:12: headSilence.least`. */
function placeIn(file: ProfileFile, path: readonly PropertyKey[]): string {
  const line = file.lineOf(path);
  const place = line === null ? file.path : `${file.path}:${line}`;
  return [place, fieldName(path)].filter(Boolean).join(': ');
}
