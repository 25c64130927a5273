import { describe, expect, it } from 'vitest';
import { findingSection } from '../../../../src/report/html/sections/finding-section.js';
import { forecastedFile } from '../../../support/forecast-fixture.js';

function captionOf(count: number): string {
  const file = forecastedFile({});
  const { findings } = file.forecast;
  const many = Array.from({ length: count }, (_, at) => findings.slice(at % findings.length)[0]);
  const forecast = { ...file.forecast, findings: many.flatMap((one) => (one ? [{ ...one }] : [])) };
  const { html } = findingSection({ ...file, forecast }, 'metric');
  return /<caption>(.*?)<\/caption>/.exec(html)?.[1] ?? '';
}

describe('the findings of a page', () => {
  it.for([
    [6, 'In time order.'],
    [7, 'In time order.<span class="paper-only"> The worst 6 of 7; all are on the screen.</span>'],
    [
      500,
      'In time order.<span class="screen-only"> The worst 400 of 500.</span>' +
        '<span class="paper-only"> The worst 6 of 500; 400 are on the screen.</span>',
    ],
  ] as const)('%d of them say on paper how many the screen has', ([count, caption]) => {
    expect(captionOf(count)).toBe(caption);
  });
});
