import { WAV_CONTAINERS } from '../analysis/sound-file.js';
import type { SourceFile } from '../forecast-result.js';
import type { PlacedBreach } from './broken-rules.js';
import type { Rules } from './rules.js';

/** What the rules say of a file as such: its container, rate, depth and name. */
export function fileBreaches(
  name: string,
  sources: readonly SourceFile[],
  rules: Rules,
): PlacedBreach[] {
  const breaches = sources.flatMap((source) => sourceBreaches(source, rules));
  if (rules.name !== null && !rules.name.matches(name)) {
    breaches.push(whole({ id: 'rule-name', found: name, allowed: rules.name.text }));
  }
  return breaches;
}

function sourceBreaches(source: SourceFile, rules: Rules): PlacedBreach[] {
  const { container, sampleRate, encoding, bitDepth } = source;
  const { containers, sampleRates, bitDepths } = rules;
  const breaches: PlacedBreach[] = [];
  if (containers !== null && !containers.some((one) => isKind(container, one))) {
    breaches.push(whole({ id: 'rule-container', found: container, allowed: containers }));
  }
  if (sampleRates !== null && !sampleRates.includes(sampleRate)) {
    breaches.push(whole({ id: 'rule-rate', found: sampleRate, allowed: sampleRates }));
  }
  const depth = encoding === 'float' ? 'float' : bitDepth;
  if (bitDepths !== null && !bitDepths.includes(depth)) {
    const found = { encoding, bitDepth };
    breaches.push(whole({ id: 'rule-depth', found, allowed: bitDepths }));
  }
  return breaches;
}

function isKind(found: SourceFile['container'], allowed: string): boolean {
  return found === allowed || (allowed === 'WAV' && WAV_CONTAINERS.some((kind) => kind === found));
}

function whole(breach: PlacedBreach['breach']): PlacedBreach {
  return { breach, atSeconds: null };
}
