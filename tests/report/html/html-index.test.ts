import { describe, expect, it } from 'vitest';
import { htmlIndex } from '../../../src/report/html/html-index.js';
import { indexRow } from '../../../src/report/html/index-row.js';
import { findingWith, forecastedFile, planWith } from '../../support/forecast-fixture.js';

const OPTIONS = { units: 'metric', assets: { script: 'x', style: 'p{}' }, version: '0' } as const;

function row(name: string, recommendedDb: number | null, verdict: 'clear' | 'caution' | 'fault') {
  const headroom = { fillDb: 0, traceDb: 0, recommendedDb, limitedBy: null };
  return indexRow(forecastedFile({ name }, { headroom, verdict }), `${name}.html`);
}

describe('the page of many sides', () => {
  it('puts the worst first: by verdict, by the level that holds, by land', () => {
    const tight = forecastedFile(
      { name: 'tight' },
      { verdict: 'clear', machine: planWith({ landMin: 1e-6 }) },
    );
    const rows = [
      row('good', 0.5, 'clear'),
      indexRow(tight, 'tight.html'),
      row('quieter', -3, 'caution'),
      row('careful', 0, 'caution'),
      row('broken', 0.5, 'fault'),
      row('hopeless', null, 'fault'),
    ];
    const names = [...htmlIndex(rows, OPTIONS).matchAll(/<a href="(\w+)\.html">/g)].map(
      ([, name]) => name,
    );
    expect(names).toEqual(['hopeless', 'broken', 'quieter', 'careful', 'tight', 'good']);
  });

  it('counts what is open, not what the house accepts', () => {
    const accepted = { ...findingWith({ severity: 'fault' }), accepted: { reason: 'heard' } };
    const file = forecastedFile({}, { findings: [findingWith(), accepted] });
    expect(indexRow(file, 'a.html').counts).toEqual({ fault: 0, caution: 1, note: 0 });
  });

  it('tells no level that holds of a side without sound, as the table of a folder does', () => {
    const headroom = { fillDb: 12, traceDb: 12, recommendedDb: 12, limitedBy: null };
    const levelOf = (id: 'silent' | 'mono') =>
      /<td>([^<]*dB|–|none)<\/td>/.exec(
        htmlIndex(
          [indexRow(forecastedFile({}, { headroom, findings: [findingWith({ id })] }), 'a.html')],
          OPTIONS,
        ),
      )?.[1];
    expect(levelOf('silent')).toBe('–');
    expect(levelOf('mono')).toBe('+12.0 dB');
  });

  it('leads nowhere but beside itself, and runs nothing', () => {
    const bad = ['javascript:alert(1)', '//elsewhere/', 'data:text/html,a', '\\\\elsewhere'];
    const rows = bad.map((href) => indexRow(forecastedFile({ name: '<img src=x>' }), href));
    const html = htmlIndex(rows, OPTIONS);
    expect(html.match(/href="#"/g)?.length).toBe(bad.length);
    expect(html).not.toMatch(/javascript:|elsewhere|data:text|<img|<script/);
  });

  it('names what could not be read', () => {
    const failures = [{ path: 'a.wav', code: 'not-wav' as const, message: 'a<b.wav: no WAV file' }];
    expect(htmlIndex([], { ...OPTIONS, failures })).toContain('a&#60;b.wav: no WAV file');
  });
});
