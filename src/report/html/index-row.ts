import type { ForecastedFile } from '../../forecast-result.js';
import type { PlanReport, Severity, SideForecast, Verdict } from '../../model/forecast-types.js';
import { type SetUp, setUp } from '../set-up.js';

/** A side in the index: a few numbers, so that hundreds of them are small. */
export interface IndexRow {
  readonly name: string;
  /** Of the side's own page, relative to the index; percent-encoded by whoever writes it. */
  readonly href: string;
  readonly verdict: Verdict;
  readonly counts: Readonly<Record<Severity, number>>;
  readonly durationSeconds: number;
  readonly levelDb: number;
  readonly set: SetUp;
  readonly recommendedDb: number | null;
  /** There is no sound, so that no level says anything. */
  readonly isSilent: boolean;
  readonly executed: Pick<PlanReport, 'endDiameter' | 'spare' | 'landMin'>;
  readonly plan: Pick<PlanReport, 'endDiameter' | 'spare' | 'landMin'>;
  readonly executes: SideForecast['executes'];
  /** In a sentence, what would mend it; null where nobody asked. */
  readonly mends: string | null;
}

/** @param href the side's page, as a URL relative to the index */
export function indexRow(
  file: ForecastedFile,
  href: string,
  mends: string | null = null,
): IndexRow {
  const { verdict, findings, durationSeconds, levelDb, headroom, executes, plan } = file.forecast;
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const count = (of: Severity) => open.filter(({ severity }) => severity === of).length;
  return {
    name: file.name,
    href,
    verdict,
    counts: { fault: count('fault'), caution: count('caution'), note: count('note') },
    durationSeconds,
    levelDb,
    set: setUp(file),
    recommendedDb: headroom.recommendedDb,
    isSilent: findings.some(({ id }) => id === 'silent'),
    executed: endOf(file.forecast[executes]),
    plan: endOf(plan),
    executes,
    mends,
  };
}

function endOf({ endDiameter, spare, landMin }: PlanReport): IndexRow['plan'] {
  return { endDiameter, spare, landMin };
}
