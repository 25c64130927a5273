import { INCH, type Metres } from '../units.js';

/** Parts of an inch that a lathe's rule shows. */
const PARTS = 64;

/**
 * A diameter as it is read off a rule: whole inches and the nearest sixty-fourth, reduced: `9 7/64`,
 * `4 3/4`, `11`. Off by at most 1/128 inch, 0.2 mm.
 */
export function ruleText(diameter: Metres): string {
  const parts = Math.round((diameter / INCH) * PARTS);
  if (parts <= 0) return '';
  const whole = Math.floor(parts / PARTS);
  let [above, below] = [parts % PARTS, PARTS];
  if (above === 0) return String(whole);
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}
