import type { MotionSummary } from '../../../../../src/analysis/motion.js';
import type { SourceFacts } from '../../../../../src/model/forecast-types.js';
import type { HandSettings } from '../../../../../src/model/side-plan-input.js';
import type { HotSpotEdges } from '../../../../../src/report/html/page/page-side.js';
import type { Planner, Settings } from '../../../../../src/settings.js';

/** What the harness page needs to make a side; typed arrays survive packHarness and back. */
export interface HarnessData {
  readonly name: string;
  readonly settings: Settings;
  readonly motion: MotionSummary;
  readonly source: SourceFacts;
  readonly levelDb: number;
  readonly planner: Planner;
  readonly units: 'metric' | 'us';
  readonly microscope: readonly (HotSpotEdges | null)[];
  readonly hand?: HandSettings;
}

const ROWS = { Float64Array, Float32Array, Int16Array, Uint32Array };
const KIND = '$kind';

/** As text that can lie in a script element. */
export function packHarness(data: HarnessData): string {
  const text = JSON.stringify(data, (_key, value: unknown) => {
    for (const [name, Row] of Object.entries(ROWS)) {
      if (value instanceof Row) return { [KIND]: name, numbers: [...value] };
    }
    return value;
  });
  return text.replaceAll('<', '\\u003c');
}

export function unpackHarness(text: string): HarnessData {
  const data: HarnessData = JSON.parse(text, (_key, value) => {
    const kind: unknown = value?.[KIND];
    for (const [name, Row] of Object.entries(ROWS)) {
      if (kind === name) return Row.from(value.numbers);
    }
    return value;
  });
  return data;
}
