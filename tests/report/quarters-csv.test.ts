import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { quartersToJson } from '../../src/report/plan-json.js';
import { quartersCsv } from '../../src/report/quarters-csv.js';
import { forecastedFile } from '../support/forecast-fixture.js';

describe('the quarter turns as CSV', () => {
  const file = forecastedFile();
  const csv = quartersCsv(file);
  const lines: Record<string, string>[] = parse(csv, { columns: true, record_delimiter: '\r\n' });
  const json = quartersToJson(file.forecast.quarters);

  test('have the names and the numbers of the JSON, a row a quarter; null is empty', () => {
    const columns = Object.keys(json).map((name) => [name, lines.map((line) => line[name])]);
    const wanted = Object.entries(json).map(([name, values]) => [
      name,
      values.map((value) => (value === null ? '' : String(value))),
    ]);
    expect(columns).toEqual(wanted);
    expect(lines[0]?.['bendMinUm']).toBe('');
    expect(lines[1]).toMatchObject({ atSeconds: '0.45', radiusMm: '146', bendMinUm: '20' });
  });

  test('are plain numbers behind one line of names, for any reader', () => {
    const [names, ...rows] = csv.split('\r\n');
    expect(names).toMatch(/^atSeconds,radiusMm,pitchUm,/);
    expect(rows.pop()).toBe('');
    for (const row of rows) expect(row).toMatch(/^[-\d.,]+$/);
  });
});
