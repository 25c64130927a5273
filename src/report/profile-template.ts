import { allowedText } from '../profile/allowed-text.js';
import { COMMON_DEFAULTS, DISC_DEFAULTS } from '../profile/profile-defaults.js';
import { type GuideRow, PROFILE_GUIDE, SOURCE_MARKS } from '../profile/profile-guide.js';
import type { Profile } from '../profile/profile-schema.js';
import { mergeProfile } from '../profile/resolve-profile.js';
import { valueAt } from '../profile/value-at.js';
import { REPLACE_FIRST } from './replace-first.js';
import { wrapText } from './wrap-text.js';

const MACHINE = 'machine.';

type Flags = Readonly<Record<string, unknown>>;

/**
 * A profile with every field at its default and a comment on each: what it is, what it may hold,
 * where the default is from. JSON with comments. Read again, it resolves to the defaults.
 * @param flags disc and rpm, in the notation of a profile, where they are not to be the defaults
 */
export function profileTemplate(flags: Flags): string {
  const { profile } = mergeProfile({ flags });
  const groups = PROFILE_GUIDE.map(({ title, fields }) => {
    const machine = fields.filter(([field]) => field.startsWith(MACHINE));
    const texts = fields.flatMap((row) => {
      if (row === machine[0]) return [machineText(machine, profile)];
      return machine.includes(row) ? [] : [fieldText(row, profile, flags, '  ')];
    });
    return [`  // ---- ${title} ----`, ...texts].join('\n\n');
  });
  const body = groups.join('\n\n').replace(/,$/, '');
  return `${headText(profile)}\n{\n${body}\n}\n`;
}

function headText({ disc, rpm }: Profile): string {
  const speed = rpm === 33 ? '33⅓' : String(rpm);
  const paragraphs = [
    'Profile of a lathe and a house. JSON with comments: what stands behind // is not read. Every ' +
      `field is here with furrow's default for a ${disc}-inch at ${speed} rpm; one that is taken ` +
      'out keeps it. A few are behind // themselves, and say why.',
    'The defaults are a starting point, not a lathe. Without figures of your own in these fields ' +
      'a forecast is a guess; replace them first, in this order:',
  ];
  const first = REPLACE_FIRST.map(([fields, why]) => commented(`${fields.join(', ')}: ${why}.`, 2));
  return [
    ...paragraphs.map((text) => commented(text)),
    first.join('\n'),
    commented('`furrow profile` tells what holds, and from where.'),
  ].join('\n//\n');
}

function machineText(rows: readonly GuideRow[], profile: object): string {
  const inside = rows.map((row) => fieldText(row, profile, {}, '    ')).join('\n\n');
  const what = "The lathe's own automation, as the planner `machine` imitates it.";
  return `${indented(plain(what), '  ')}\n  "machine": {\n${inside.replace(/,$/, '')}\n  },`;
}

function fieldText([field, what, from]: GuideRow, profile: object, flags: Flags, indent: string) {
  const value = valueAt(profile, field.split('.'));
  const name = field.replace(MACHINE, '');
  const member = `${JSON.stringify(name)}: ${JSON.stringify(value)},`;
  const comments = [
    sentence(plain(what)),
    `Allowed: ${value === null ? allowedText(field) : withoutExample(allowedText(field))}.`,
    `Default: ${defaultText(field)}. From: ${sourceText(from)}.`,
  ].map((text) => indented(text, indent));
  const why = openReason(field, flags);
  if (why === null) return [...comments, `${indent}${member}`].join('\n');
  return [...comments, indented(why, indent), `${indent}// ${member}`].join('\n');
}

/** Why a field is left open, its line behind //; null for one that is written out. */
function openReason(field: string, flags: Flags): string | null {
  // Written out it would pass for the house's word, and no forecast would say that it is assumed.
  if (field === 'executes') {
    return 'Until the // before the next line is taken away, every forecast says it is assumed.';
  }
  // Written out they would hold for other discs too, and --disc would contradict them.
  const isOfDisc = Object.hasOwn(DISC_DEFAULTS[12], field) && field !== 'disc';
  if (!isOfDisc || Object.hasOwn(flags, field)) return null;
  return 'Goes with disc and --disc until the // before the next line is taken away.';
}

/** The default, or those of each size of disc where they differ. */
function defaultText(field: string): string {
  const path = field.split('.');
  const of = (defaults: object) => JSON.stringify(valueAt(defaults, path));
  if (!Object.hasOwn(DISC_DEFAULTS[12], field)) return of(COMMON_DEFAULTS);
  return ([12, 10, 7] as const)
    .map((disc) => `${of(DISC_DEFAULTS[disc])} (${disc}-inch)`)
    .join(', ');
}

/** A source of the guide with its mark in words. */
function sourceText(from: string): string {
  if (from === '') return "furrow's own choice";
  return Object.entries(SOURCE_MARKS).reduce((text, [mark, words]) => {
    // A mark by itself, or behind a colon, is the source; behind a source it is said of it.
    const alone = new RegExp(`(^|: )\\[${mark.slice(1, -1)}\\]`, 'g');
    return text.replace(alone, `$1${words}`).replaceAll(mark, `(${words})`);
  }, plain(from));
}

/** Without the marks of code and of titles. */
function plain(markdown: string): string {
  return markdown.replaceAll(/[`*]/g, '');
}

function withoutExample(allowed: string): string {
  return allowed.replace(/, such as .*$/, '');
}

/** With a capital letter and a full stop. */
function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function commented(text: string, hanging = 0): string {
  return wrapText(plain(text), `//${' '.repeat(1 + hanging)}`, `//${' '.repeat(1 + 2 * hanging)}`);
}

function indented(text: string, indent: string): string {
  return wrapText(text, `${indent}// `, `${indent}// `);
}
