import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { calmSide, roughSide } from '../../examples/demo/sides.mjs';
import { writeWav } from '../../examples/demo/write-wav.mjs';
import { sharedFolder } from '../support/shared-folder.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const PROFILE = join(ROOT, 'examples', 'furrow.profile.json');

const forecast = z.object({
  sides: z.array(
    z.object({
      verdict: z.enum(['clear', 'caution', 'fault']),
      findings: z.array(z.object({ id: z.string(), severity: z.string() })),
    }),
  ),
});
type Side = z.infer<typeof forecast>['sides'][number];

async function forecastSide(path: string): Promise<Side> {
  const args = [join(ROOT, 'bin', 'furrow.js'), 'forecast', '--profile', PROFILE, '--json', path];
  const { stdout } = await execa(process.execPath, args, { env: {}, extendEnv: false });
  return forecast.parse(JSON.parse(stdout)).sides[0]!;
}

describe("the demo's sides on the invented lathe", () => {
  const folder = sharedFolder();
  let rough: Side;
  let calm: Side;
  beforeAll(async () => {
    const paths: string[] = [];
    for (const makeSide of [roughSide, calmSide]) {
      const { file, tape } = makeSide();
      paths.push(join(await folder(), file));
      writeWav(paths.at(-1)!, tape);
    }
    rough = await forecastSide(paths[0]!);
    calm = await forecastSide(paths[1]!);
  }, 120_000);

  test.each([
    'overcut',
    'land-low',
    'lift',
    'low-vertical',
    'facet',
    'tight-bend',
    'echo-risk',
    'too-long',
  ])('the rough mix shows %s', (id) => {
    expect(rough.findings.map((finding) => finding.id)).toContain(id);
  });

  test('the rough mix cannot be cut, the calm mix can, without a caution', () => {
    expect(rough.verdict).toBe('fault');
    expect(calm.verdict).toBe('clear');
    expect(calm.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});
