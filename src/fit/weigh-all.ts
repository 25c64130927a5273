import { basePitchFor, isOfThePitch } from '../model/fit-base-pitch.js';
import { applyRemedies } from './apply-remedies.js';
import { climbLadder } from './climb-ladder.js';
import type { LeftOut, WeighedRemedy } from './fit-result.js';
import { gapRemedies } from './gap-remedies.js';
import { type Ladder, localLadders } from './local-ladders.js';
import { orderRemedies } from './order-remedies.js';
import { type Passage, passagesOf } from './passages.js';
import { pitchLadder } from './pitch-ladder.js';
import type { Remedy } from './remedy.js';
import { milderEllipticals, sideWide } from './side-wide.js';
import type { Patient } from './trial.js';
import { weighRemedy } from './weigh.js';

/** Passages that are treated one by one: of more, a list would be no help. */
const MOST_PASSAGES = 8;
/** What is longer is no passage but the side. */
const LONGEST_SECONDS = 120;

/** Remedies with what each does by itself, and the kinds that were not tried. */
export interface AllWeighed {
  readonly remedies: readonly WeighedRemedy[];
  readonly leftOut: readonly LeftOut[];
}

/** Weighs what can be done about a side as a whole, and in each passage with faults. */
export async function weighAll(patient: Patient, isFiltered: boolean): Promise<AllWeighed> {
  const { cut, side, planner, source, sound } = patient;
  const { recommendedDb } = patient.headroom;
  const pitch = basePitchFor(side, planner, cut.levelDb, source, isOfThePitch);
  const holdsDb = recommendedDb === null ? null : recommendedDb - cut.levelDb;
  const wide = [
    ...gapRemedies(patient),
    ...sideWide(cut.settings, pitch, holdsDb, isFiltered).filter(
      (remedy) => sound !== null || !needsSound(remedy),
    ),
    ...orderRemedies(patient),
  ];
  const first = await weighTogether(patient, wide);
  const milder = isFiltered || sound === null ? [] : milderEllipticals(cut.settings);
  const isWorth = first.some(({ remedy, ...gains }) => remedy.kind === 'elliptical' && does(gains));
  const remedies = [...first, ...(isWorth ? await weighTogether(patient, milder) : [])];
  const { passages, leftOut } = treated(passagesOf(patient.faults));
  const local = await Promise.all(passages.map((passage) => weighPassage(patient, passage)));
  return {
    remedies: [...inStrength(remedies), ...local.flat()],
    leftOut: [
      ...(sound === null ? (['no-sound'] as const) : []),
      ...(isFiltered ? (['own-filters'] as const) : []),
      ...(!isWorth && milder.length > 0 ? (['needless-ellipticals'] as const) : []),
      ...leftOut,
    ],
  };
}

/** Those that need the whole side are measured in one read; of a longer gap only what is near it. */
async function weighTogether(
  patient: Patient,
  remedies: readonly Remedy[],
): Promise<WeighedRemedy[]> {
  const whole = remedies.filter(({ kind }) => kind !== 'gap');
  await patient.sound?.measureWhole(whole.map((remedy) => applyRemedies(patient.cut, [remedy])));
  const weighed: WeighedRemedy[] = [];
  for (const remedy of remedies) weighed.push(await weighRemedy(patient, remedy));
  return weighed;
}

/** Whether a remedy does anything that its figures, which are held to a tenth, can tell. */
function does({ mends, gainDb, spareGain, ...levels }: Omit<WeighedRemedy, 'remedy'>): boolean {
  const isNewlyHeld = gainDb === null && levels.fillDb !== null && levels.traceDb !== null;
  return mends.length > 0 || isNewlyHeld || (gainDb ?? 0) >= 0.1 || spareGain >= 0.1e-3;
}

/** Positions of the elliptical filter by corner and order, the others in their places. */
function inStrength(weighed: readonly WeighedRemedy[]): WeighedRemedy[] {
  const isElliptical = ({ remedy }: WeighedRemedy) => remedy.kind === 'elliptical';
  const strength = ({ remedy }: WeighedRemedy) =>
    remedy.kind === 'elliptical' ? remedy.corner + remedy.order / 10 : 0;
  const first = weighed.findIndex(isElliptical);
  const ellipticals = weighed.filter(isElliptical).sort((a, b) => strength(a) - strength(b));
  const others = weighed.filter((each) => !isElliptical(each));
  return first < 0 ? others : others.toSpliced(first, 0, ...ellipticals);
}

function needsSound({ kind }: Remedy): boolean {
  return kind === 'elliptical' || kind === 'polarity' || kind === 'rpm';
}

/** The worst passages first that are short enough, in time again. */
function treated(all: readonly Passage[]): {
  readonly passages: readonly Passage[];
  readonly leftOut: readonly LeftOut[];
} {
  const short = all.filter(
    ({ fromSeconds, untilSeconds }) => untilSeconds - fromSeconds <= LONGEST_SECONDS,
  );
  const worst = [...short].sort((a, b) => excess(b) - excess(a)).slice(0, MOST_PASSAGES);
  return {
    passages: short.filter((passage) => worst.includes(passage)),
    leftOut: [
      ...(short.length < all.length ? (['long-passage'] as const) : []),
      ...(worst.length < short.length ? (['many-passages'] as const) : []),
    ],
  };
}

/** How far its worst fault is past its limit, as a share of it or of a micrometre. */
function excess({ faults }: Passage): number {
  return Math.max(
    ...faults.map(({ fault: { value, limit } }) => {
      const past = Math.abs((value ?? 0) - (limit ?? 0));
      return past / Math.max(Math.abs(limit ?? 0), 1e-6);
    }),
  );
}

async function weighPassage(patient: Patient, passage: Passage): Promise<WeighedRemedy[]> {
  const { cut, side, planner, sound, source } = patient;
  const ladders: Ladder[] = [
    pitchLadder(side, planner, cut.levelDb, passage),
    ...localLadders(passage, cut.settings, source.sampleRate / 2),
  ];
  const weighed: WeighedRemedy[] = [];
  for (const ladder of ladders) {
    const changesSound = ladder.rungs.some(
      ({ kind }) => kind !== 'pitch-there' && kind !== 'width-there',
    );
    if (sound === null && changesSound) continue;
    const remedy = await climbLadder(patient, ladder);
    if (remedy !== null) weighed.push(remedy);
  }
  return weighed;
}
