/** Pages are laid out and printed by Chromium, and counted in its PDF. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import type { ForecastedFile } from '../../../src/forecast-result.js';
import type { Finding, HotSpot } from '../../../src/model/forecast-types.js';
import type { HandSettings } from '../../../src/model/side-plan-input.js';
import { cutSheet, cutSheetPage } from '../../../src/report/cut-sheet/cut-sheet.js';
import { forecastSchema } from '../../../src/report/forecast-schema.js';
import { findingWith, forecastedFile } from '../../support/forecast-fixture.js';
import { inventedProgram, RATE } from '../../support/invented-program.js';
import { trackWith } from '../../support/invented-track.js';
import { runInProcess } from '../../support/run-in-process.js';
import { writeWav } from '../../support/sheet-side.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import { closeBrowser, needBrowser, withPage } from '../html/browser/open-page.js';

/** Ends every context that a name could stand in. */
const HOSTILE =
  '</style></title><script>alert(1)</script><img src=x onerror=alert(2)>" onfocus="alert(3)\u202e\n`';
const MINUTE = 60;

/** A side with as much on it as there may be, its tracks of so many. */
function fullSide(tracks: number, name = 'Invented side'): ForecastedFile {
  const places = Array.from({ length: tracks }, (_, at) => ({
    fromSeconds: (at * 20 * MINUTE) / tracks,
    untilSeconds: ((at + 0.9) * 20 * MINUTE) / tracks,
  }));
  const hand: HandSettings = {
    basePitch: [{ fromSeconds: 61, pitch: 127e-6 }],
    baseWidth: [{ fromSeconds: 62, width: 60e-6 }],
    bands: places.slice(1).map(({ fromSeconds }) => ({
      fromSeconds: fromSeconds - 1.5,
      untilSeconds: fromSeconds - 0.5,
      pitch: 1.5e-3,
    })),
    tracks: places.map((place) => ({ ...place, name })),
  };
  const plain = forecastedFile({ name, hand });
  const [spot] = plain.forecast.hotSpots;
  if (spot === undefined) throw new Error('no hot spot in the fixture');
  const hotSpots = Array.from(
    { length: 5 },
    (_, at): HotSpot => ({ ...spot, atSeconds: 100 + 200 * at, turn: at % 2, land: -4.8e-6 }),
  );
  const ids = ['overcut', 'lift', 'facet', 'tight-bend', 'too-deep', 'land-low'] as const;
  const findings = ids.flatMap((id): Finding[] => [
    findingWith({ id, severity: 'fault' }),
    findingWith({ id, severity: 'fault', atSeconds: 300 }),
  ]);
  const figures = places.map((place) => trackWith({ ...place, name }));
  const headroom = { ...plain.forecast.headroom, recommendedDb: -3 };
  return {
    ...plain,
    forecast: {
      ...plain.forecast,
      hotSpots,
      findings,
      tracks: figures,
      headroom,
      verdict: 'fault',
    },
  };
}

beforeEach(needBrowser);
afterAll(closeBrowser);

describe('the cut sheet', () => {
  test.for([
    [1, 'in large type'],
    [10, 'in small type'],
    [40, 'told as far as there is room'],
  ] as const)('is one sheet of A4 a side, with %i tracks %s', async ([tracks]) => {
    const pages = [cutSheetPage(fullSide(tracks), 'metric'), cutSheetPage(fullSide(tracks), 'us')];
    await withPage(cutSheet(pages, '0.0.0'), async ({ page, complaints, requests }) => {
      await page.emulateMedia({ media: 'print' });
      const room = await page
        .locator('.sheet')
        .evaluateAll((sheets) =>
          sheets.map(({ scrollHeight, clientHeight, scrollWidth, clientWidth }) => [
            scrollHeight - clientHeight,
            scrollWidth - clientWidth,
          ]),
        );
      // Nothing is cut off, neither below nor at the side.
      expect(room).toEqual([
        [0, 0],
        [0, 0],
      ]);
      const below = await page
        .locator('.sheet')
        .first()
        .evaluate((sheet) => {
          const signed = sheet.querySelector('.signed');
          const cautions = sheet.querySelector('.cautions');
          if (signed === null || cautions === null) return Number.NaN;
          return signed.getBoundingClientRect().top - cautions.getBoundingClientRect().bottom;
        });
      expect(below).toBeGreaterThan(0);
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type \/Page\b/g)?.length).toBe(2);
      // A4 is 210 by 297 mm (ISO 216), in points of 1/72 inch.
      const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
      expect(Number(width)).toBeWithin((210 / 25.4) * 72, 1, 0);
      expect(Number(height)).toBeWithin((297 / 25.4) * 72, 1, 0);
      expect([complaints, requests]).toEqual([[], []]);
    });
  });

  test('says how many steps it has no room for, and still tells where the side ends', async () => {
    const html = cutSheet([cutSheetPage(fullSide(40), 'metric')], '0.0.0');
    // 40 tracks, 39 bands, 2 steps by hand, end and lead-out.
    const told = html.match(/class="tick"><span>/g)?.length ?? 0;
    expect(told).toBeGreaterThan(20);
    expect(html).toContain(`${83 - told} more steps have no room here`);
    expect(html).toContain('program ends');
    expect(html).toContain('lead-out from here on');
  });

  test('shows hostile names as they are, and has no script that could run', async () => {
    const html = cutSheet([cutSheetPage(fullSide(3, HOSTILE), 'metric')], '0.0.0');
    expect(html).toContain("script-src 'none'");
    await withPage(html, async ({ page, dialogs, complaints, requests }) => {
      const title = await page.locator('h1').textContent();
      expect(title).toContain('</style></title><script>alert(1)</script>');
      expect(title).toContain('\\u{202e}');
      expect(await page.locator('script, img').count()).toBe(0);
      expect([dialogs, complaints, requests]).toEqual([[], [], []]);
    });
  });

  test('is written by the command, with what the forecast says of each side', async () => {
    const folder = await temporaryFolder();
    const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
    const one = await writeWav(folder, 'one.wav', inventedProgram(6, 1), format);
    const two = await writeWav(folder, 'two.wav', inventedProgram(6, 2), format);
    const sheet = join(folder, 'cut.html');
    const args = ['forecast', '--no-discovery', '--quiet', '--cutsheet', sheet, '--json', one, two];
    const { stdout, exitCode } = await runInProcess(args);
    expect(exitCode).toBe(0);
    const { sides } = forecastSchema.parse(JSON.parse(stdout));
    await withPage(await readFile(sheet, 'utf8'), async ({ page }) => {
      expect(await page.locator('h1').allTextContents()).toEqual(['one.wav', 'two.wav']);
      for (const [at, { hotSpots, machine }] of sides.entries()) {
        const side = page.locator('.sheet').nth(at);
        const figures = (await side.locator('.microscope tbody').textContent()) ?? '';
        expect(hotSpots.length).toBeGreaterThan(0);
        for (const { landUm, landNominalUm } of hotSpots) {
          const nominal = (landNominalUm ?? 0).toFixed(1);
          expect(figures).toContain(`${(landUm ?? 0).toFixed(1)} – ${nominal} µm`);
        }
        const ends = await side.locator('tr.end').first().textContent();
        expect(ends).toContain(`${(machine.endDiameterMm ?? 0).toFixed(1)} mm`);
      }
    });
  });
});
