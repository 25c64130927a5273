import type { ForecastedFile } from '../forecast-result.js';
import type { HandBand, HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import { ceilToStep } from '../steps.js';
import type { MetresPerTurn, Seconds } from '../units.js';
import { fixed, frequencyText, largeLengthText, type Units } from './length-text.js';
import { timeText } from './place-text.js';
import { safePitchText } from './safe-pitch-text.js';
import { meterReading, safeCorner } from './set-up.js';
import { trimSteps } from './trim-steps.js';
import { widthText } from './width-text.js';

/**
 * What the operator does by hand while the side is cut, each in time order; what holds from the
 * first sample on is dialled in before. Empty where there is nothing to do.
 */
export function handText({ hand, settings }: ForecastedFile, units: Units): string {
  const { basePitch = [], baseWidth = [], bands = [], tracks = [] } = hand ?? {};
  const clock = (at: Seconds) => clockText(at, settings);
  const pitch = (wanted: MetresPerTurn) => {
    const dialled = ceilToStep(wanted, settings.pitchStep);
    return safePitchText(dialled, settings.pitchStep, units);
  };
  const parts = [
    ...basePitch
      .filter(isLater)
      .map((step) => `base pitch ${pitch(step.pitch)} from ${clock(step.fromSeconds)}`),
    ...baseWidth.filter(isLater).map(({ width, fromSeconds }) => {
      const reading = meterReading(settings.depthMeter, width);
      const meter = reading === null ? '' : `, depth meter ${Number(fixed(reading, 2))},`;
      return `groove ${widthText(width, units)}${meter} from ${clock(fromSeconds)}`;
    }),
    ...filterTexts(tracks, settings),
    ...trimSteps(tracks, settings).map(({ what, atSeconds }) => `${what} from ${clock(atSeconds)}`),
    ...bandTexts(bands, settings, units),
  ];
  return parts.length === 0 ? '' : `By hand: ${parts.join('; ')}.`;
}

function isLater({ fromSeconds }: { readonly fromSeconds: Seconds }): boolean {
  return fromSeconds > 0;
}

/** Each track whose elliptical filter is another than that of the one before it. */
function filterTexts(tracks: readonly HandTrack[], settings: Settings): string[] {
  const texts = tracks.map(({ elliptical }) => {
    if (elliptical === undefined) return null;
    const { corner, order } = elliptical;
    const position = safeCorner(corner, settings.ellipticalSteps);
    if (position === null) return 'elliptical out';
    return `elliptical ${frequencyText(position)}, ${6 * order} dB per octave,`;
  });
  return tracks.flatMap(({ fromSeconds }, at) => {
    const text = texts[at] ?? null;
    if (at === 0 || text === null || text === texts[at - 1]) return [];
    return [`${text} from ${clockText(fromSeconds, settings)}`];
  });
}

/** Bands of one pitch in one. */
function bandTexts(bands: readonly HandBand[], settings: Settings, units: Units): string[] {
  const pitches = [...new Set(bands.map(({ pitch }) => pitch))];
  return pitches.map((pitch) => {
    const times = bands
      .filter((band) => band.pitch === pitch)
      .map(({ fromSeconds, untilSeconds }) => {
        const lasts = (untilSeconds - fromSeconds) / settings.speedFactor;
        return `${clockText(fromSeconds, settings)} for ${Number(fixed(lasts, 2))} s`;
      });
    return `markers of ${largeLengthText(pitch, units)} a turn at ${times.join(', ')}`;
  });
}

/** Program time, at half speed the lathe's too. */
function clockText(at: Seconds, { speedFactor }: Settings): string {
  return speedFactor === 1 ? timeText(at) : `${timeText(at)} (lathe ${timeText(at / speedFactor)})`;
}
