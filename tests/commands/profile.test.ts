import { chmod, mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { type ParseError, parse } from 'jsonc-parser';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { runFurrow } from '../support/run-furrow.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const NAME = 'furrow.profile.json';

describe('--init', () => {
  test('writes a profile that is found, refused by nobody, and leaves nothing else', async () => {
    const cwd = await temporaryFolder();
    const written = await runFurrow(['profile', '--init'], { cwd });
    expect(written).toMatchObject({ stdout: '', exitCode: 0 });
    expect(written.stderr).toMatch(
      /wrote furrow.profile.json\n.*referenceVelocity, referenceDbfs;/,
    );
    expect(await readdir(cwd)).toEqual([NAME]);
    const { stdout, stderr, exitCode } = await runFurrow(['profile'], { cwd });
    expect(stderr).toContain(`furrow: profile ${NAME}\n`);
    expect(stderr).toMatch(
      /nothing but defaults[\s\S]*put the house's figures into furrow.profile.json/,
    );
    expect(stdout).toMatch(/^ {2}referenceVelocity +"7cm\/s" +profile, line \d+ \(the default\)$/m);
    expect(exitCode).toBe(0);
  });

  test('is accepted by the schema of a profile once its comments are taken out', async () => {
    const [schema, template] = await Promise.all([
      runFurrow(['schema', 'profile']),
      runFurrow(['profile', '--init', '-']),
    ]);
    expect(template).toMatchObject({ stderr: '', exitCode: 0 });
    const validate = new Ajv2020({ allowUnionTypes: true }).compile(
      z.record(z.string(), z.unknown()).parse(JSON.parse(schema.stdout)),
    );
    const errors: ParseError[] = [];
    const profile: unknown = parse(template.stdout, errors);
    expect(errors).toEqual([]);
    expect(validate(profile), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...z.object({}).loose().parse(profile), basePich: 1 })).toBe(false);
  });

  test('takes the defaults of the disc, and a speed', async () => {
    const { stdout } = await runFurrow(['profile', '--init', '-', '--disc', '7', '--rpm', '45.1']);
    expect(stdout).toContain('"startDiameter": "168.3mm"');
    expect(stdout).toContain('"rpm": 45.1,');
    expect(stdout).toContain('7-inch at 45.1 rpm');
  });

  test('overwrites nothing, not even a link that leads nowhere', async () => {
    const cwd = await temporaryFolder();
    await writeFile(join(cwd, NAME), '{}');
    await symlink('nowhere', join(cwd, 'link.json'));
    await mkdir(join(cwd, 'folder'));
    const complaints = [
      [[], /furrow.profile.json is there already and is not overwritten\n.*give another name/],
      [['link.json'], /link.json is there already/],
      [['folder'], /folder is a folder; name a file, folder\/furrow.profile.json/],
      [['missing/x.json'], /missing.*not there/],
    ] as const;
    for (const [args, complaint] of complaints) {
      const { stdout, stderr, exitCode } = await runFurrow(['profile', '--init', ...args], { cwd });
      expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
      expect(stderr).toMatch(complaint);
    }
    expect(await readFile(join(cwd, NAME), 'utf8')).toBe('{}');
    expect(await readdir(cwd)).toEqual(['folder', NAME, 'link.json']);
  });

  test.each(['--json', '--pitch=300lpi', '--width=2mil', '--elliptical=150', '--profile=x.json'])(
    'goes with no %s, which it would not heed',
    async (option) => {
      const { stderr, exitCode } = await runFurrow(['profile', '--init', '-', option]);
      expect(stderr).toContain("option '--init [file]' cannot be used with option '--");
      expect(exitCode).toBe(2);
    },
  );

  test('goes with no size of disc that does not exist', async () => {
    const { stderr, exitCode } = await runFurrow(['profile', '--init', '-', '--disc', '11']);
    expect(stderr).toBe('furrow: --disc: found 11, expected one of 12, 10, 7\n');
    expect(exitCode).toBe(2);
  });
});

describe('the values', () => {
  test('as text are told by group in 80 columns, with line and option', async () => {
    const cwd = await temporaryFolder();
    const table = '[{"reading": 20, "width": "40um"}, {"reading": 45, "width": "74um"}]';
    await writeFile(join(cwd, NAME), `{\n"landMin": "15um",\n"depthMeter": ${table}}`);
    const { stdout, stderr } = await runFurrow(['profile', '--pitch', '280lpi'], { cwd });
    expect(stderr).toBe(`furrow: profile ${NAME}\n`);
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(stdout).toMatch(/^ {2}landMin +"15um" +profile, line 2$/m);
    expect(stdout).toMatch(/^ {2}basePitch +"280lpi" +--pitch$/m);
    expect(stdout).toMatch(/^ {2}startDiameter +"292.1mm" +default for 12-inch$/m);
    expect(stdout).toMatch(
      /^ {2}depthMeter +\[ +profile, line 3\n +\{ "reading": 20, "width": "40um" \},$/m,
    );
  });

  test('as JSON are a profile, each with its origin, the same bytes each time', async () => {
    const cwd = await temporaryFolder();
    await writeFile(join(cwd, NAME), '{\n"disc": 7,\n"machine": {"gain": 1.2}}');
    const args = ['profile', '--json', '--quiet'];
    const [one, other] = await Promise.all([runFurrow(args, { cwd }), runFurrow(args, { cwd })]);
    expect(one).toEqual({ ...other, stderr: '', exitCode: 0 });
    const valueSchema = z.object({ value: z.unknown(), from: z.string(), isDefault: z.boolean() });
    const { format, profile, values } = z
      .object({
        format: z.string(),
        profile: z.string().nullable(),
        values: z.record(z.string(), valueSchema.loose()),
      })
      .loose()
      .parse(JSON.parse(one.stdout));
    expect({ format, profile }).toEqual({ format: 'furrow.profile-values/1', profile: NAME });
    expect(values['disc']).toEqual({ value: 7, from: 'file', line: 2, isDefault: false });
    expect(values['rpm']).toEqual({ value: 45, from: 'disc', disc: 7, isDefault: true });
    expect(values['machine.gain']).toEqual({ value: 1.2, from: 'file', line: 3, isDefault: false });
    // Pasted into a profile of their own they are the profile.
    const pasted = Object.entries(values).filter(([field]) => !field.includes('.'));
    const fields = Object.fromEntries(pasted.map(([field, { value }]) => [field, value]));
    await writeFile(join(cwd, 'pasted.json'), JSON.stringify(fields));
    const again = await runFurrow([...args, '--profile', 'pasted.json'], { cwd });
    expect(again).toMatchObject({ stderr: '', exitCode: 0 });
    expect(again.stdout).toContain('"value": "168.3mm"');
  });

  test('without a file are the defaults, and stderr warns of them', async () => {
    const cwd = await temporaryFolder();
    await writeFile(join(cwd, NAME), '{"landMin": "15um"}');
    const { stdout, stderr } = await runFurrow(['profile', '--no-discovery'], { cwd });
    expect(stdout).toContain('Values from: no profile file');
    expect(stderr).toContain('no profile file: built-in defaults');
    expect(stderr).toMatch(/warning: nothing but defaults[\s\S]*furrow profile --init/);
  });
});

describe('a profile that cannot be taken is wrong usage: one line, with place and expectation', () => {
  test.each([
    ['{ // ours\n "rpm": 45, /* single */ }', null],
    ['\ufeff{}', null],
    ['{"rpm": 45,,}', /house.json:1: found ",", expected property name/],
    ['', /house.json: is empty, expected/],
    [' \n// nothing\n', /house.json: is empty, expected/],
    ['{"rpm": 33,\n"rpm": 45}', /house.json:2: "rpm" is set twice/],
    ['{"machine": {\n"gian": 1}}', /house.json:2: machine.gian: .*nearest is "gain"/],
    ['{"basePich": "300lpi"}', /house.json:1: basePich: .*nearest is "basePitch"/],
    ['{"basePitch": 300}', /basePitch: found 300, expected a pitch with its unit/],
    ['{"baseWidth": "2"}', /baseWidth: found "2", expected a length with its unit/],
    ['{"baseWidth": "2lpi"}', /baseWidth: found "2lpi", expected a length/],
    ['{"referenceVelocity": "7um"}', /found "7um", expected a speed with its unit/],
    ['{"baseWidth": "-2mil"}', /baseWidth: found "-2mil", expected a length/],
    ['{"rpm": -33}', /rpm: found -33, expected a number from 10 to 100/],
    ['{"rpm": NaN}', /house.json:1: found "NaN", /],
    ['{"rpm": 1e999}', /rpm: found .*, expected a number from 10 to 100/],
    ['{"rpm": null}', /rpm: found null, expected a number/],
    ['{"depthMeter": 7}', /depthMeter: found 7, expected a list of two entries or more/],
    ['{"depthMeter": []}', /depthMeter: found \[\], expected a list of two entries/],
    [
      '{"depthMeter": [{"reading": 1, "width": 2}, {"reading": 2, "width": "2mil"}]}',
      /depthMeter\[0\]\.width: found 2, expected a length/,
    ],
    ['{"machine": 7}', /machine: found 7, expected the fields of machine in braces/],
    ['{"ellipticalSteps": 150}', /found 150, expected a list of numbers/],
    ['{"innerDiameter": "300mm"}', /innerDiameter must be under startDiameter/],
    ['[]', /house.json:1: found \[\], expected/],
    ['"x"', /house.json:1: found "x", expected/],
    ['null', /house.json:1: found null, expected/],
    ['\u0000\u0001RIFF', /house.json:1: found .*, expected names and texts in double quotes/],
  ])('%j', async (text, complaint) => {
    const cwd = await temporaryFolder();
    await writeFile(join(cwd, 'house.json'), text);
    const { stdout, stderr, exitCode } = await runFurrow(['profile', '--profile', 'house.json'], {
      cwd,
    });
    if (complaint === null) return expect(exitCode).toBe(0);
    expect(stderr).toMatch(complaint);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
  });

  test('a folder, a missing file and one that may not be read are named', async () => {
    const cwd = await temporaryFolder();
    await mkdir(join(cwd, 'folder.json'));
    await writeFile(join(cwd, 'secret.json'), '{}');
    await chmod(join(cwd, 'secret.json'), 0);
    const files = [
      ['folder.json', 'it is a folder'],
      ['missing.json', 'there is no such file'],
    ];
    // Root may read everything.
    if (process.getuid?.() !== 0) files.push(['secret.json', 'it may not be read']);
    for (const [name = '', reason = ''] of files) {
      const { stderr, exitCode } = await runFurrow(['profile', '--profile', name], { cwd });
      expect(stderr).toContain(`furrow: ${name}: cannot be read as a profile: ${reason}`);
      expect(exitCode).toBe(2);
    }
  });
});
