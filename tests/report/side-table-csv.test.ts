import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { sideToJson } from '../../src/report/side-json.js';
import { tableCsv, tableRow } from '../../src/report/side-table-csv.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

type Line = Readonly<Record<string, string>>;

function linesOf(csv: string): Line[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n', bom: true });
}

const FAILURE = {
  path: 'sides/=broken.wav',
  code: 'not-wav',
  message: 'no RIFF, found "ID3"',
} as const;

describe('the table of sides', () => {
  const findings = [
    findingWith({ id: 'lift', severity: 'fault', atSeconds: 300, accepted: { reason: 'wanted' } }),
    findingWith({ id: 'overcut', severity: 'fault', atSeconds: 500, value: -3e-6, limit: 0 }),
    findingWith({ id: 'too-deep', severity: 'fault', atSeconds: 65.43 }),
    findingWith({ atSeconds: 10 }),
    findingWith({ id: 'mono', severity: 'note', atSeconds: null }),
  ];
  const file = forecastedFile({ name: 'Größe.wav' }, { findings });
  const csv = tableCsv([tableRow(file), tableRow(FAILURE)]);
  const [line, failed] = linesOf(csv);

  test('has a line a result, failures too, in the order given', () => {
    expect(linesOf(csv)).toHaveLength(2);
    expect(line).toMatchObject({
      name: 'Größe.wav',
      path: 'sides/invented-side.wav',
      failureCode: '',
    });
    expect(failed).toMatchObject({
      name: '',
      verdict: '',
      failureCode: 'not-wav',
      failureMessage: FAILURE.message,
    });
  });

  test('does not hand a formula to the spreadsheet that opens it', () => {
    const named = linesOf(tableCsv([tableRow({ ...FAILURE, path: '=broken.wav' })]))[0];
    expect(named?.['path']).toBe("'=broken.wav");
  });

  test('begins with a byte order mark, by which a spreadsheet knows UTF-8', () => {
    expect(csv.startsWith('\uFEFFname,path,verdict,')).toBe(true);
  });

  test('has the same columns for a failure, a side and nothing at all', () => {
    const header = (text: string) => text.split('\r\n')[0];
    expect(header(tableCsv([tableRow(FAILURE)]))).toBe(header(csv));
    expect(tableCsv([])).toBe(`${header(csv)}\r\n`);
    expect(Object.keys(tableRow(FAILURE))).toEqual(Object.keys(tableRow(file)));
  });

  test('has the numbers of the JSON, with its rounding', () => {
    const json = sideToJson(file, { quarters: false });
    const wanted = {
      durationSeconds: json.durationSeconds,
      turns: json.turns,
      sampleRateHz: json.sources[0]?.sampleRate,
      levelDb: json.levelDb,
      setupLevelDb: json.setup.levelDb,
      setupBasePitchLpi: json.setup.basePitchLpi,
      setupWidthMil: json.setup.widthMil,
      machineEndDiameterMm: json.machine.endDiameterMm,
      machineSpareMm: json.machine.spareMm,
      planEndDiameterMm: json.plan.endDiameterMm,
      planMeanLpi: json.plan.meanLpi,
      planLandMinUm: json.plan.landMinUm,
      planLandMinAtSeconds: json.plan.landMinAtSeconds,
      planWidthMinUm: json.plan.widthMinUm,
      planCutDepthMaxUm: json.plan.cutDepthMaxUm,
      fixedLandMinUm: json.fixed.landMinUm,
      loudnessLufs: json.program.loudnessLufs,
      truePeakDbtp: json.program.truePeakDbtp,
      averageDb: json.program.averageDb,
      fillDb: json.headroom.fillDb,
      traceDb: json.headroom.traceDb,
      recommendedDb: json.headroom.recommendedDb,
      limitedBy: json.headroom.limitedBy?.id,
    };
    const texts = Object.entries(wanted).map(([name, value]) => [name, String(value)]);
    expect(line).toMatchObject(Object.fromEntries(texts));
    expect(line).toMatchObject({ fixedFits: 'false', setupMeterReading: '', duration: '20:00.0' });
  });

  test('counts what is found, and apart from it what the house accepts', () => {
    expect(line).toMatchObject({ faults: '2', cautions: '1', notes: '1', accepted: '1' });
    expect(failed).toMatchObject({ faults: '', cautions: '', notes: '', accepted: '' });
  });

  test('names the first of the worst that is not accepted, and where it is', () => {
    expect(line).toMatchObject({
      worstFinding: 'too-deep',
      worstSeverity: 'fault',
      worstAt: '01:05.4',
      worstAtSeconds: '65.43',
    });
    expect(line?.['worstMessage']).toContain('Too deep');
  });

  test('keeps nothing of the columns per quarter turn', () => {
    for (const cell of Object.values(tableRow(file))) {
      expect(['string', 'number', 'boolean', 'object']).toContain(typeof cell);
      if (typeof cell === 'object') expect(cell).toBeNull();
    }
  });
});
