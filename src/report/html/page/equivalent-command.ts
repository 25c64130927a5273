import { COMMON_DEFAULTS, DISC_DEFAULTS } from '../../../profile/profile-defaults.js';
import { settingsToJson } from '../../../profile/settings-to-json.js';
import { toSettings } from '../../../profile/to-settings.js';
import type { Settings } from '../../../settings.js';
import type { PageHead } from '../data/page-head.js';
import { shellQuote } from './shell-quote.js';
import { settingsOf, type WhatIf } from './what-if.js';

const PROFILE = 'what-if.profile.json';

/**
 * The command that forecasts what is tried, for a POSIX shell: every setting that is not a default
 * goes into a profile of its own, so that nothing depends on where the command is run.
 */
export function equivalentCommand(head: PageHead, whatIf: WhatIf): string {
  const { levelDb, planner, units } = whatIf;
  const settings = settingsOf(head, whatIf);
  const profile = JSON.stringify(changesFromDefault(settings));
  const isDefault = profile === '{}';
  const words = [
    ...head.command,
    ...(isDefault ? ['--no-discovery'] : ['--profile', PROFILE]),
    '--level',
    String(levelDb),
    '--planner',
    planner,
    ...(units === 'us' ? ['--units', 'us'] : []),
    ...(head.paths.some((path) => path.startsWith('-')) ? ['--'] : []),
    ...head.paths,
  ];
  const command = words.map(shellQuote).join(' ');
  return isDefault ? command : `printf %s ${shellQuote(profile)} > ${PROFILE} && ${command}`;
}

/** The fields of a profile that differ from the defaults of the disc. */
function changesFromDefault(settings: Settings): Record<string, unknown> {
  const { disc, medium, executesIsSet } = settings;
  const defaults = toSettings({ ...COMMON_DEFAULTS, ...DISC_DEFAULTS[disc] }, false);
  const usual = new Map<string, unknown>(Object.entries(settingsToJson(defaults)));
  const changed = Object.entries(settingsToJson(settings)).filter(([field, value]) => {
    if (field === 'executes') return executesIsSet;
    // Metal has no defaults of its own; a profile must give these two.
    if (medium === 'metal' && (field === 'depthMax' || field === 'landMin')) return true;
    return JSON.stringify(value) !== JSON.stringify(usual.get(field));
  });
  return Object.fromEntries(disc === 12 ? changed : [['disc', disc], ...changed]);
}
