import { readFile } from 'node:fs/promises';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { runFurrow } from '../support/run-furrow.js';

describe('help and version', () => {
  test('the version is the package’s, on stdout', async () => {
    const content: unknown = JSON.parse(await readFile('package.json', 'utf8'));
    const { stdout, stderr, exitCode } = await runFurrow(['--version']);
    expect(content).toMatchObject({ version: stdout.trim() });
    expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
  });

  test.each([[['--help']], [['forecast', '--help']], [['schema', '--help']]])(
    '%j tells the exit codes and the cautions',
    async (args) => {
      const { stdout, stderr, exitCode } = await runFurrow(args);
      expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
      expect(stdout).toMatch(/^ +3 +some input could not be read/m);
      expect(stdout).toMatch(/^ +130 +interrupted/m);
      expect(stdout.match(/^Exit codes:/gm)).toHaveLength(1);
      const flat = stdout.replaceAll(/\s+/g, ' ');
      expect(flat).toContain('no substitute for a test cut under the microscope');
      expect(flat).toContain('swarf burn');
    },
  );

  test('without a command the help goes to stderr, and that is wrong usage', async () => {
    const { stdout, stderr, exitCode } = await runFurrow([]);
    expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
    expect(stderr).toContain('Usage: furrow');
  });
});

describe('wrong usage is exit code 2, nothing on stdout, and a reason on stderr', () => {
  test.each([
    [['forcast'], /unknown command 'forcast'[\s\S]*forecast/],
    [['--wat'], /unknown option '--wat'/],
    [['schema', 'nothing'], /Allowed choices are forecast, ndjson, profile/],
    [['forecast', 'x.wav', '--pich', '300lpi'], /unknown option '--pich'[\s\S]*--pitch/],
    [
      ['forecast', 'x.wav', '--planner', 'widest'],
      /Allowed choices are fixed, machine, turn-ahead, tightest/,
    ],
    [['forecast', 'x.wav', '--units', 'imperial'], /Allowed choices are metric, us/],
    [['forecast', 'x.wav', '--fail-on', 'clear'], /Allowed choices are note, caution, fault/],
    [['forecast', 'x.wav', '--json', '--ndjson'], /'--json' cannot be used with option '--ndjson'/],
    [['forecast', 'x.wav', '--level', 'loud'], /Expected a number/],
    [['forecast', 'x.wav', '--level', ''], /Expected a number/],
    [['forecast', 'x.wav', '--level', '99'], /--level: found 99, expected -40 to 20 dB/],
    [['forecast', 'x.wav', '--quarters'], /--quarters: its columns are in the JSON/],
    [
      ['forecast', 'x.wav', '--pitch', '300'],
      /--pitch: found "300", expected a pitch with its unit/,
    ],
    [['forecast', 'x.wav', '--width', '2'], /--width: found "2", expected a length with its unit/],
    [['forecast', 'x.wav', '--width', '300lpi'], /--width: found "300lpi", expected a length/],
    [['forecast', 'x.wav', '--disc', '11'], /--disc: found 11, expected one of 12, 10, 7/],
    [['forecast', 'x.wav', '--rpm', '0'], /--rpm: found 0, expected a number from 10 to 100/],
    [
      ['forecast', 'x.wav', '--elliptical', '1'],
      /--elliptical: found 1, expected a number from 10/,
    ],
    [['forecast', 'x.wav', '--pitch', '20lpi'], /--pitch: basePitch must be at most pitchMax/],
    [
      ['forecast', 'x.wav', '--profile', 'nowhere.json'],
      /nowhere.json: cannot be read as a profile/,
    ],
    [['forecast', '--files-from', 'nowhere.txt'], /--files-from: nowhere.txt cannot be read/],
    [['forecast'], /no path was given/],
    [['forecast', 'nothing-matches-*.wav'], /nothing-matches-\*\.wav/],
  ])('%j', async (args, reason) => {
    const { stdout, stderr, exitCode } = await runFurrow(args);
    expect(stderr).toMatch(reason);
    expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
  });

  test('what was typed cannot act on the terminal', async () => {
    const { stderr } = await runFurrow(['\u001b[31mred\u202e']);
    expect(stderr).not.toContain('\u001b');
    expect(stderr).toContain("unknown command '\\u{1b}[31mred\\u{202e}'");
  });
});

test.each(['forecast', 'ndjson', 'profile'])(
  'schema %s writes a JSON Schema that compiles',
  async (name) => {
    const { stdout, stderr, exitCode } = await runFurrow(['schema', name]);
    expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
    const schema: unknown = JSON.parse(stdout);
    if (typeof schema !== 'object' || schema === null) throw new Error('no object');
    expect(new Ajv2020({ allowUnionTypes: true }).compile(schema)).toBeTypeOf('function');
  },
);

test('schema alone is that of the forecast', async () => {
  const [named, alone] = await Promise.all([
    runFurrow(['schema', 'forecast']),
    runFurrow(['schema']),
  ]);
  expect(alone.stdout).toBe(named.stdout);
});
