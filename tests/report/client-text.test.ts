import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readSoundHead } from '../../src/analysis/open-sound.js';
import { InputError } from '../../src/errors.js';
import { FINDING_IDS, type Finding, type Headroom } from '../../src/model/forecast-types.js';
import { clientSide } from '../../src/report/client-side.js';
import { clientText } from '../../src/report/client-text.js';
import { FAILURE_CODES, type Failure } from '../../src/report/failure.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const ROOMY: Headroom = { fillDb: 3, traceDb: 3, recommendedDb: 3, limitedBy: null };

function sideWith(
  findings: readonly Finding[],
  headroom: Partial<Headroom> = {},
  name = 'one.wav',
) {
  const given = { findings, headroom: { ...ROOMY, ...headroom } };
  return clientSide(forecastedFile({ name }, given));
}

/** What the client reads of one side, on one line. */
function read(findings: readonly Finding[], headroom: Partial<Headroom> = {}): string {
  return clientText([sideWith(findings, headroom)], []).replaceAll(/\s+/g, ' ');
}

const SEVERITIES = ['fault', 'caution', 'note'] as const;
const FREQUENCIES = [null, 60, 800, 7400];
const EVERYTHING = FINDING_IDS.flatMap((id) =>
  SEVERITIES.flatMap((severity) =>
    FREQUENCIES.flatMap((frequency) => [
      findingWith({ id, severity, frequency, value: 44_100, limit: 48_000 }),
      findingWith({ id, severity, frequency, atSeconds: null, value: null, wall: 'both' }),
    ]),
  ),
);

/** Words of the trade that nobody outside of it knows, and units they come with. */
const JARGON =
  /\b(?:land|lpi|pitch|facets?|bends?|elliptical|overcut|lift|walls?|lacquer|lathe|radius|diameter|slew|µm|mil|dbfs|dbtp|lufs|premaster|truncated|vertical|lateral|turns?|tip|stylus|undefined|null|NaN|Infinity)\b/i;

describe("the client's text", () => {
  test('holds no word of the trade, whatever is found and whatever limits the level', () => {
    const limits = FINDING_IDS.map((id) =>
      sideWith([findingWith({ id, severity: 'fault' })], {
        recommendedDb: -2,
        limitedBy: { id, atSeconds: 1 },
      }),
    );
    const failures = FAILURE_CODES.map((code) => ({ path: 'x.wav', code, message: 'land' }));
    const each = EVERYTHING.map((finding) => sideWith([finding]));
    const text = clientText([...each, ...limits, sideWith(EVERYTHING)], failures);
    expect(JARGON.exec(text)).toBeNull();
  });

  test('keeps to 80 columns', () => {
    const lines = clientText([sideWith(EVERYTHING)], []).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test('goes file by file in the order given, failures last, and ends with a line break', () => {
    const failures: Failure[] = [{ path: '/house/in/c.mp3', code: 'not-wav', message: 'no RIFF' }];
    const text = clientText([sideWith([], {}, 'b.wav'), sideWith([], {}, 'a.wav')], failures);
    expect(text.split('\n').filter((line) => /\.(?:wav|mp3)/.test(line))).toEqual([
      'b.wav, 20:00',
      'a.wav, 20:00',
      'c.mp3',
    ]);
    expect(text).toContain('not a WAV file');
    expect(text).not.toContain('/house');
    expect(text).toMatch(/[^\n]\n$/);
  });

  test('shows control characters in names instead of passing them on', () => {
    const name = 'a\u001b[2J.wav';
    const failures: Failure[] = [{ path: `in/${name}`, code: 'no-data', message: '' }];
    const text = clientText([sideWith([], {}, name)], failures);
    expect(text.match(/a\\u\{1b\}\[2J\.wav/g)).toHaveLength(2);
    expect(text).not.toContain('\u001b');
  });
});

describe('whether a file can be cut', () => {
  test('is yes without findings', () => {
    expect(read([])).toContain(
      'one.wav, 20:00 -------------- It can be cut as it is. There is nothing to change.',
    );
  });

  test('is yes for what the lathe is set up for, which is not the client\u2019s to know', () => {
    for (const id of ['land-low', 'echo-risk'] as const) {
      expect(read([findingWith({ id, severity: 'caution' })])).toContain(
        'There is nothing to change.',
      );
    }
  });

  test('is yes with something to know for notes, and with what would be better for cautions', () => {
    expect(read([findingWith({ id: 'mono', severity: 'note' })])).toContain(
      'It can be cut as it is. Something to know: 1.',
    );
    expect(read([findingWith({ id: 'clipped', severity: 'caution' })])).toContain(
      'It can be cut as it is. It would come out better with this change.',
    );
  });

  test('is not yet said of a file that breaks off', () => {
    const text = read([findingWith({ id: 'truncated', severity: 'caution' })]);
    expect(text).toContain('Part of it may be missing, so it should not be cut yet.');
    expect(text).not.toContain('It can be cut');
  });

  test('is yes but quieter where a lower level mends the fault, by as much as was computed', () => {
    const room = { recommendedDb: -2.5, limitedBy: { id: 'lift', atSeconds: 3 } } as const;
    const text = read([findingWith({ id: 'lift', severity: 'fault' })], room);
    expect(text).toContain('It can be cut as it is, but 2.5 dB quieter than planned');
    expect(text).toContain('To have it louder, send it with this change;');
  });

  test('promises no level for a change that does not mend what limits it', () => {
    const room = { recommendedDb: -2.5, limitedBy: { id: 'overcut', atSeconds: 3 } } as const;
    const overcut = findingWith({ id: 'overcut', severity: 'fault' });
    expect(read([overcut], room)).toMatch(/but 2\.5 dB quieter than planned, [^.]*\. $/);
    expect(read([overcut, findingWith({ id: 'clipped' })], room)).not.toContain('louder, send');
  });

  test('says that what is wrong at the planned loudness is about that, but not of the file itself', () => {
    const room = { recommendedDb: -3, limitedBy: { id: 'overcut', atSeconds: 3 } } as const;
    const fault = findingWith({ id: 'overcut', severity: 'fault' });
    const about = 'What follows is about the planned loudness.';
    const steep = findingWith({ id: 'facet', severity: 'fault' });
    expect(read([fault, steep], room)).toMatch(
      /3\.0 dB quieter .* with this change\. What follows/,
    );
    expect(read([fault, findingWith({ id: 'clipped' })], room)).not.toContain(about);
    expect(read([steep], { recommendedDb: 3 })).not.toContain(about);
  });

  test('says nothing of level where the level asked for has no fault', () => {
    expect(
      read([findingWith({ id: 'lift', severity: 'caution' })], { recommendedDb: -2 }),
    ).not.toContain('quieter');
  });

  test('is no where there is no level or no sound', () => {
    const no = 'It cannot be cut as it is.';
    const none = { recommendedDb: null } as const;
    expect(read([findingWith({ id: 'silent', severity: 'fault' })])).toContain(`${no} Please send`);
    expect(read([findingWith({ id: 'lift', severity: 'fault' })], none)).toContain(
      `${no} Please send`,
    );
    expect(read([findingWith({ id: 'overcut', severity: 'fault' })], none)).toContain(
      `${no} The cutting room will look for a way`,
    );
  });

  test('does not count what the house accepts, nor tell it', () => {
    const accepted = findingWith({ id: 'lift', severity: 'fault', accepted: { reason: 'wanted' } });
    const text = read([accepted], { recommendedDb: -3 });
    expect(text).toContain('It can be cut as it is. There is nothing to change.');
  });
});

describe('what is wrong', () => {
  test('is told once a kind, with all its times in order and those that touch as one', () => {
    const at = (atSeconds: number, untilSeconds: number) =>
      findingWith({ id: 'lift', severity: 'fault', atSeconds, untilSeconds, frequency: 58 });
    const text = read([at(250.2, 250.9), at(144.7, 170.5), at(171.2, 192.9)]);
    expect(text).toContain('1. 02:24 to 03:12 and 04:10 The bass swings between the two speakers');
    expect(text.match(/The bass swings/g)).toHaveLength(1);
  });

  test('is told once where one change mends two kinds at the same times', () => {
    const bright = { severity: 'fault', frequency: 7400, untilSeconds: 200 } as const;
    const facet = findingWith({ id: 'facet', ...bright });
    const inside = findingWith({ id: 'tight-bend', ...bright, atSeconds: 193, untilSeconds: 195 });
    const room = { recommendedDb: -2, limitedBy: { id: 'tight-bend', atSeconds: 193 } } as const;
    const text = read([facet, inside], room);
    expect(text.match(/with a de-esser/g)).toHaveLength(1);
    expect(text).toContain('To have it louder, send it with this change;');
    const later = findingWith({ id: 'tight-bend', ...bright, atSeconds: 193, untilSeconds: 205 });
    expect(read([facet, later]).match(/with a de-esser/g)).toHaveLength(2);
    const bass = findingWith({ id: 'lift', ...bright, frequency: 60 });
    expect(read([facet, bass])).toMatch(/2\. .*The bass swings/);
  });

  test('stands faults first, then cautions, then notes', () => {
    const text = read([
      findingWith({ id: 'mono', severity: 'note', atSeconds: null }),
      findingWith({ id: 'clipped', severity: 'caution' }),
      findingWith({ id: 'facet', severity: 'fault' }),
    ]);
    expect(text).toMatch(/1\. .*too strong.*2\. .*cut off flat.*3\. The whole file Left and right/);
  });

  test.each<[string, Partial<Finding>, string]>([
    [
      'bass that swings, by its frequency',
      { id: 'lift', frequency: 58 },
      'speakers, mostly around 58 Hz.',
    ],
    [
      'bright sounds',
      { id: 'tight-bend', frequency: 7400 },
      'S sounds, cymbals or other bright sounds are harsh',
    ],
    [
      'bright sounds no needle follows',
      { id: 'tight-bend', severity: 'fault', frequency: 7400 },
      'too harsh: even a good needle',
    ],
    ['bass that is too fast', { id: 'facet', frequency: 60 }, 'The low notes are so strong'],
    ['what is neither', { id: 'facet', frequency: 800 }, 'The loudest voices and instruments'],
    [
      'how much too long',
      { id: 'too-long', severity: 'fault', atSeconds: 1120.3 },
      'a side about 1 min 20 s shorter',
    ],
    [
      'how often peaks are cut off',
      { id: 'clipped', value: 214 },
      'cut off flat, 214 times, the first of them here',
    ],
    [
      'peaks by an amount that is enough',
      { id: 'over-peak', value: 0.31 },
      'exported 0.4 dB quieter or more',
    ],
    [
      'peaks by no more than it takes',
      { id: 'over-peak', value: 0.4 },
      'exported 0.4 dB quieter or more',
    ],
    ['the shifted side', { id: 'dc-offset', wall: 'right' }, 'shifted all the time, on the right'],
    ['the speaker that plays', { id: 'one-sided', wall: 'right' }, 'Only the right speaker plays'],
    ['what could be read', { id: 'truncated' }, 'What could be read lasts 20:00'],
    ['the rate', { id: 'rate-low', value: 32_000, limit: 44_100 }, 'rate of 32 kHz'],
    [
      'the rate that is wanted',
      { id: 'rate-low', value: 32_000, limit: 44_100 },
      'original at 44.1 kHz or more',
    ],
  ])('names %s', (_, changes, words) => {
    expect(read([findingWith(changes)])).toContain(words);
  });

  test('names the range where one kind has several frequencies, and one where they are near', () => {
    const at = (frequency: number) => findingWith({ id: 'facet', frequency });
    expect(read([at(7900), at(6200)])).toContain('mostly around 6.2 kHz to 7.9 kHz');
    expect(read([at(7900), at(7400)])).toContain('mostly around 7.9 kHz, with');
  });

  test('is the house\u2019s business where only the lathe can mend it', () => {
    const text = read(EVERYTHING.filter(({ id }) => ['overcut', 'pitch-limit'].includes(id)));
    expect(text).not.toContain('1.');
  });
});

test('an empty file is told to have broken off on its way, not to be of another kind', async () => {
  const path = join(await temporaryFolder(), 'side.wav');
  const toldOf = async (bytes: string) => {
    await writeFile(path, bytes);
    const error: unknown = await readSoundHead(path).catch((cause: unknown) => cause);
    if (!(error instanceof InputError)) throw new Error('read');
    return clientText([], [{ path, code: error.code, message: error.message }]);
  };
  const empty = await toldOf('');
  expect(empty).toContain('The file is empty; the transfer broke off.');
  expect(empty).toContain('What to send instead: the same file again.');
  expect(await toldOf('a letter')).toContain('This is not a WAV file');
});
