import { PROFILE_GUIDE } from '../profile/profile-guide.js';
import type { Origin, ProfileValue } from '../profile/profile-values.js';
import { safeText } from './safe-text.js';

/** Columns of the terminal view that a value may take; longer ones are broken into entries. */
const WIDEST_VALUE = 24;

/**
 * Each value with where it comes from, in the groups of the guide: name, value in the notation of a
 * profile, origin.
 * @param path of the profile file, as it is to be shown; null without one
 */
export function profileValuesText(values: readonly ProfileValue[], path: string | null): string {
  const nameWidth = Math.max(...values.map(({ field }) => field.length));
  const valueWidth = Math.max(...values.map(({ value }) => firstLine(value).length));
  const rowOf = ({ field, value, origin, isDefault }: ProfileValue): string => {
    const [first = '', ...rest] = valueLines(value);
    const columns = [
      field.padEnd(nameWidth),
      first.padEnd(valueWidth),
      originText(origin, isDefault),
    ];
    const below = rest.map((line) => `${' '.repeat(nameWidth + 4)}${line}`);
    return [`  ${columns.join('  ')}`, ...below].join('\n');
  };
  const groups = PROFILE_GUIDE.map(({ title, fields }) => {
    const names = fields.map(([field]) => field);
    const rows = values.filter(({ field }) => names.includes(field)).map(rowOf);
    return [title, ...rows].join('\n');
  });
  const file = path === null ? 'no profile file' : `profile ${safeText(path)}`;
  return `${[`Values from: ${file}`, ...groups].join('\n\n')}\n`;
}

function originText(origin: Origin, isDefault: boolean): string {
  const same = isDefault ? ' (the default)' : '';
  switch (origin.from) {
    case 'default':
      return 'default';
    case 'disc':
      return `default for ${origin.disc}-inch`;
    case 'file':
      return `profile${origin.line === null ? '' : `, line ${origin.line}`}${same}`;
    case 'option':
      return `${origin.option}${same}`;
  }
}

function firstLine(value: unknown): string {
  return valueLines(value)[0] ?? '';
}

/** A value on one line, or an array that is too long for it with an entry a line. */
function valueLines(value: unknown): string[] {
  const text = notation(value);
  if (text.length <= WIDEST_VALUE || !Array.isArray(value)) return [text];
  const entries: readonly unknown[] = value;
  const last = entries.length - 1;
  const lines = entries.map((entry, row) => `  ${notation(entry)}${row === last ? '' : ','}`);
  return ['[', ...lines, ']'];
}

/** JSON with a space behind each comma and colon that is not in a string. */
function notation(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(notation).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return safeText(JSON.stringify(value));
  const members = Object.entries(value).map(([name, of]) => `"${name}": ${notation(of)}`);
  return `{ ${members.join(', ')} }`;
}
