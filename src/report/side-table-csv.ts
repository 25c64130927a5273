import type { ForecastedFile } from '../forecast-result.js';
import { BYTE_ORDER_MARK, type Cell, csvText } from './csv.js';
import type { Failure } from './failure.js';
import {
  amplitudeDb,
  powerDb,
  roundDb,
  roundHz,
  roundRatio,
  roundSeconds,
  toLpi,
  toMil,
} from './numbers.js';
import { timeText } from './place-text.js';
import { planToJson } from './plan-json.js';
import { setUp } from './set-up.js';
import { countCells, placeCells, worstCells } from './table-findings.js';

/** The cells of one line under the names of their columns. */
export type TableRow = Readonly<Record<string, Cell>>;

/**
 * One line a side or failure, for a spreadsheet: UTF-8 behind a byte order mark, since names may
 * hold any letter. Names and roundings are the JSON's, those of the plans with the plan in front.
 * The columns are the same whatever the rows are.
 * @param rows of tableRow, in the order they are to be written
 */
export function tableCsv(rows: readonly TableRow[]): string {
  const names = Object.keys(rowOf(null, null));
  const columns = names.map((name) => [name, (row: TableRow) => row[name] ?? null] as const);
  return BYTE_ORDER_MARK + csvText(Object.fromEntries(columns), rows);
}

/** What the table says of one result; small, where a forecast with its columns is large. */
export function tableRow(result: ForecastedFile | Failure): TableRow {
  return 'forecast' in result ? rowOf(result, null) : rowOf(null, result);
}

function rowOf(file: ForecastedFile | null, failure: Failure | null): TableRow {
  const forecast = file?.forecast;
  return {
    name: file?.name ?? null,
    path: failure?.path ?? file?.sources.map(({ path }) => path).join(' | ') ?? null,
    verdict: forecast?.verdict ?? null,
    failureCode: failure?.code ?? null,
    failureMessage: failure?.message ?? null,
    duration: forecast === undefined ? null : timeText(forecast.durationSeconds),
    durationSeconds: roundSeconds(forecast?.durationSeconds ?? null),
    turns: roundSeconds(forecast?.turns ?? null),
    ...sourceCells(file),
    ...settingCells(file),
    ...setUpCells(file),
    ...planCells('machine', file),
    ...planCells('plan', file),
    ...planCells('fixed', file),
    ...programCells(file),
    ...headroomCells(file),
    ...countCells(forecast?.findings ?? null),
    ...worstCells(file),
  };
}

/** Of the first source where a side has several. */
function sourceCells(file: ForecastedFile | null): TableRow {
  const source = file?.sources[0];
  return {
    sampleRateHz: source?.sampleRate ?? null,
    bitDepth: source?.bitDepth ?? null,
    encoding: source?.encoding ?? null,
    channels: source?.channels ?? null,
  };
}

function settingCells(file: ForecastedFile | null): TableRow {
  return {
    discInches: file?.settings.disc ?? null,
    rpm: roundRatio(file?.settings.rpm ?? null),
    planner: file?.forecast.planner ?? null,
    executes: file?.forecast.executes ?? null,
    levelDb: roundDb(file?.forecast.levelDb ?? null),
  };
}

function setUpCells(file: ForecastedFile | null): TableRow {
  const dialled = file === null ? null : setUp(file);
  return {
    setupLevelDb: roundDb(dialled?.levelDb ?? null),
    setupBasePitchLpi: toLpi(dialled?.basePitch ?? null),
    setupWidthMil: toMil(dialled?.width ?? null),
    setupMeterReading: roundDb(dialled?.meterReading ?? null),
    setupEllipticalHz: roundHz(dialled?.ellipticalHz ?? null),
  };
}

function planCells(name: 'machine' | 'plan' | 'fixed', file: ForecastedFile | null): TableRow {
  const plan = file === null ? null : planToJson(file.forecast[name]);
  return {
    [`${name}Fits`]: plan?.fits ?? null,
    [`${name}EndDiameterMm`]: plan?.endDiameterMm ?? null,
    [`${name}SpareMm`]: plan?.spareMm ?? null,
    [`${name}MeanLpi`]: plan?.meanLpi ?? null,
    [`${name}LandMinUm`]: plan?.landMinUm ?? null,
    [`${name}LandMinAtSeconds`]: plan?.landMinAtSeconds ?? null,
    [`${name}WidthMinUm`]: plan?.widthMinUm ?? null,
    [`${name}CutDepthMaxUm`]: plan?.cutDepthMaxUm ?? null,
  };
}

function programCells(file: ForecastedFile | null): TableRow {
  const program = file?.program;
  const average =
    program === undefined ? null : (program.meanSquare[0] + program.meanSquare[1]) / 2;
  return {
    loudnessLufs: roundDb(program?.loudnessLufs ?? null),
    truePeakDbtp: program === undefined ? null : amplitudeDb(Math.max(...program.truePeak)),
    averageDb: average === null ? null : powerDb(average),
  };
}

function headroomCells(file: ForecastedFile | null): TableRow {
  const headroom = file?.forecast.headroom;
  return {
    fillDb: roundDb(headroom?.fillDb ?? null),
    traceDb: roundDb(headroom?.traceDb ?? null),
    recommendedDb: roundDb(headroom?.recommendedDb ?? null),
    limitedBy: headroom?.limitedBy?.id ?? null,
    ...placeCells('limitedBy', headroom?.limitedBy?.atSeconds ?? null),
  };
}
