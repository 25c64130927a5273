import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { z } from 'zod';

const COMMAND = fileURLToPath(new URL('../../bin/furrow.js', import.meta.url));

const perQuarter = z.array(z.number());
const forecast = z.object({
  format: z.literal('furrow.forecast/1'),
  sides: z.array(
    z.object({
      durationSeconds: z.number(),
      turns: z.number(),
      plan: z.object({
        landMinUm: z.number(),
        widthMinUm: z.number(),
        radiusUsedMm: z.number(),
        pitchMinUm: z.number(),
      }),
      machine: z.object({ radiusUsedMm: z.number(), pitchMaxUm: z.number() }),
      quarters: z.object({
        landUm: perQuarter,
        pitchUm: perQuarter,
        approachUm: perQuarter,
        approachLooseUm: perQuarter,
        lateralUm: perQuarter,
        liftUm: perQuarter,
        sinkUm: perQuarter,
        facetMax: perQuarter,
      }),
    }),
  ),
  failures: z.array(z.unknown()).length(0),
});

/** One side of the JSON, as far as the tests on recordings look at it: finite, where it says so. */
export type ForecastSideJson = z.infer<typeof forecast>['sides'][number];

/**
 * Forecasts files by the built command under the default profile.
 * @param flags further ones, such as `--level`
 * @returns a side a file, in their order; throws if the command does not end with 0, or if one of
 *   the figures is not a finite number
 */
export async function forecastJson(
  paths: readonly string[],
  flags: readonly string[] = [],
): Promise<ForecastSideJson[]> {
  const fixed = ['forecast', '--json', '--quarters', '--quiet'];
  const profile = flags.includes('--profile') ? [] : ['--no-discovery'];
  const { stdout } = await execa(
    process.execPath,
    [COMMAND, ...fixed, ...profile, ...flags, ...paths],
    {
      env: { NO_COLOR: '1' },
      extendEnv: false,
      maxBuffer: 2 ** 28,
    },
  );
  return forecast.parse(JSON.parse(stdout)).sides;
}
