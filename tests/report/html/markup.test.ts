import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escaped, Markup, markup } from '../../../src/report/html/markup.js';

describe('markup', () => {
  it('puts text in as text, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const { html } = markup`<p title="${text}">${text}</p>`;
        const inside = html.slice('<p title="'.length, -'</p>'.length);
        expect(inside.match(/[<>"'`]/g)).toEqual(['"', '>']);
        expect(inside.replace(/&#\d+;/g, '')).not.toContain('&');
      }),
    );
  });

  it('leaves what is markup already, and lists of it', () => {
    const items = ['a<b', 'c&d'].map((text) => markup`<li>${text}</li>`);
    expect(markup`<ul>${items}</ul>`.html).toBe('<ul><li>a&#60;b</li><li>c&#38;d</li></ul>');
  });

  it('an object that only looks like markup is no markup', () => {
    const forged = { html: '<b>' };
    expect(Object.getPrototypeOf(forged) === Markup.prototype).toBe(false);
    expect(markup`${JSON.stringify(forged)}`.html).not.toContain('<b>');
  });

  it('null and false leave nothing, 0 is a number', () => {
    expect(markup`${null}${false}${0}`.html).toBe('0');
  });

  it('shows what would turn the reading direction', () => {
    expect(escaped('a\u202eb\u2066c')).toBe('a\\u{202e}b\\u{2066}c');
  });
});
