import type { Finding } from '../model/forecast-types.js';
import type { Hertz } from '../units.js';
import { frequencyText } from './length-text.js';

/** Up to there a sound is called bass, and from there on bright: common practice, no source. */
const BASS_HZ: Hertz = 300;
const BRIGHT_HZ: Hertz = 2000;
/** Frequencies that lie nearer than this are told as one. */
const ONE_TONE = 1.2;

/** What to do where sounds are too strong or too harsh. */
export function softer(findings: readonly Finding[], around: string) {
  return isBright(findings)
    ? ({
        instead: `a mix with these sounds softened${around}, with a de-esser or less treble.`,
        cure: 'softer',
      } as const)
    : ({ instead: `a mix with these sounds turned down${around}.`, cure: 'less loud' } as const);
}

/** `The low notes are`, by what the frequencies of findings sound like. */
export function soundText(findings: readonly Finding[]): string {
  if (isBright(findings)) return 'S sounds, cymbals or other bright sounds are';
  const isBass = frequenciesOf(findings).every((frequency) => frequency <= BASS_HZ);
  return isBass && frequenciesOf(findings).length > 0
    ? 'The low notes are'
    : 'The loudest voices and instruments are';
}

/** `, mostly around 60 Hz` or `, mostly around 5.2 kHz to 7.9 kHz`; nothing where it is unknown. */
export function aroundText(findings: readonly Finding[]): string {
  const frequencies = frequenciesOf(findings);
  if (frequencies.length === 0) return '';
  const least = Math.min(...frequencies);
  const largest = Math.max(...frequencies);
  const [low, high] = [frequencyText(least), frequencyText(largest)];
  return `, mostly around ${largest < ONE_TONE * least ? high : `${low} to ${high}`}`;
}

function isBright(findings: readonly Finding[]): boolean {
  return frequenciesOf(findings).some((frequency) => frequency >= BRIGHT_HZ);
}

function frequenciesOf(findings: readonly Finding[]): Hertz[] {
  return findings.flatMap(({ frequency }) =>
    frequency === null || frequency <= 0 ? [] : [frequency],
  );
}
