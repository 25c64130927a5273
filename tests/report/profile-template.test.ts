import { describe, expect, test } from 'vitest';
import { parseProfile } from '../../src/profile/profile-file.js';
import { PROFILE_GUIDE } from '../../src/profile/profile-guide.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { profileTemplate } from '../../src/report/profile-template.js';
import { REPLACE_FIRST } from '../../src/report/replace-first.js';

const FIELDS = PROFILE_GUIDE.flatMap(({ fields }) => fields.map(([field]) => field));

describe.each([{}, { disc: 10 }, { disc: 7 }, { disc: 7, rpm: 33 }, { rpm: 33.29 }])(
  'written for %j',
  (flags) => {
    const text = profileTemplate(flags);

    test('resolves to exactly the defaults, what the lathe executes still not said', () => {
      const file = parseProfile('new.json', text);
      expect(resolveProfile({ file })).toEqual(resolveProfile({ flags }));
      expect(resolveProfile({ file }).executesIsSet).toBe(false);
    });

    test('has every field once, in the order of the guide', () => {
      const named = [...text.matchAll(/^ +(?:\/\/ )?"(\w+)": /gm)].map(([, name]) => name);
      expect(named.filter((name) => name !== 'machine')).toEqual(
        FIELDS.map((field) => field.replace('machine.', '')),
      );
    });

    test('can be read in 80 columns', () => {
      expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    });
  },
);

test('lines that are left open hold the defaults too, once they are taken in', () => {
  const text = profileTemplate({}).replaceAll(/^( +)\/\/ (?="\w+": )/gm, '$1');
  expect(text).not.toBe(profileTemplate({}));
  const settings = resolveProfile({ file: parseProfile('new.json', text) });
  expect(settings).toEqual({ ...resolveProfile(), executesIsSet: true });
});

test('another disc on the command line brings its diameters and its speed', () => {
  const file = parseProfile('new.json', profileTemplate({}));
  expect(resolveProfile({ file, flags: { disc: 7 } })).toEqual(
    resolveProfile({ flags: { disc: 7 } }),
  );
});

test('every field says where its default is from, in words', () => {
  const text = profileTemplate({}).replaceAll(/\n +\/\/ /g, ' ');
  expect(text.match(/ Default: .+?\. From: \S/g)).toHaveLength(FIELDS.length);
  expect(text).toContain('Default: "300lpi". From: common practice, no published source.');
  expect(text).toContain('Default: "500um". From: furrow\'s own choice.');
  expect(text).toContain('allows 0.5 % (published standard).');
  expect(text).toContain('below about that, echo is likely (from memory).');
  expect(text).not.toMatch(/\[(?:std|sec|pub|mem|cp)\]|`/);
});

test('the head names what to replace first, the reference level before all else', () => {
  const head = profileTemplate({}).split('in this order:')[1]?.split('\n{\n')[0] ?? '';
  const named = REPLACE_FIRST.flatMap(([fields]) => fields);
  expect(named.slice(0, 3)).toEqual(['referenceVelocity', 'referenceDbfs', 'executes']);
  expect(named.filter((field) => field !== 'machine' && !FIELDS.includes(field))).toEqual([]);
  const places = named.map((field) => head.search(new RegExp(`\\b${field}[,:]`)));
  expect(places).not.toContain(-1);
  expect(places).toEqual(places.toSorted((one, other) => one - other));
});
