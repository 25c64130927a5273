import { PROFILE_GUIDE } from '../../../profile/profile-guide.js';
import { settingsToJson } from '../../../profile/settings-to-json.js';
import type { Settings } from '../../../settings.js';
import { type Markup, markup } from '../markup.js';

/** Every field of the profile that the forecast was made with, in the notation of a profile. */
export function settingsSection(settings: Settings): Markup {
  const { machine, ...plain } = settingsToJson(settings);
  const own = Object.entries(machine).map(([name, value]) => [`machine.${name}`, value] as const);
  const values = new Map<string, unknown>([...Object.entries(plain), ...own]);
  const groups = PROFILE_GUIDE.map(({ title, fields }) => {
    const rows = fields.map(
      ([field]) => markup`<div><dt>${field}</dt><dd>${valueText(values.get(field))}</dd></div>`,
    );
    return markup`<div class="group"><h3>${title}</h3><dl>${rows}</dl></div>`;
  });
  return markup`<section class="settings" aria-labelledby="settings"><h2 id="settings">The settings</h2><div class="groups">${groups}</div></section>`;
}

/** Six digits are more than any setting is known to. */
function valueText(value: unknown): string {
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'number') return String(Number(value.toPrecision(6)));
  if (typeof value !== 'string') return JSON.stringify(value);
  return value.replace(/^[0-9.]+/, (digits) => String(Number(Number(digits).toPrecision(6))));
}
