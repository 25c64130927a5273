// README.md's tables of the profile against the guide that the comments of `furrow profile --init`
// are made of: the same fields in the same order and groups, and the same words.
import { describe, expect, test } from 'vitest';
import { PROFILE_GUIDE, SOURCE_MARKS } from '../../src/profile/profile-guide.js';
import { profileSchema } from '../../src/profile/profile-schema.js';
import { prose, README, tableRows } from './markdown.js';

describe.each(PROFILE_GUIDE)('$title', ({ title, fields }) => {
  const section =
    prose(README)
      .split(`**${title}**`)[1]
      ?.split(/^(?:\*\*|#)/m)[0] ?? '';
  const shown = tableRows(section).filter(([field]) => field !== 'field');

  test('README.md and the guide say the same of the same fields, in the same order', () => {
    expect(shown.map(([field, , what, from]) => [field, what, from])).toEqual(
      fields.map(([field, what, from]) => [`\`${field}\``, what, from]),
    );
  });
});

test('the guide names every field of a profile once', () => {
  const { machine, ...others } = profileSchema.shape;
  const inMachine = Object.keys(machine.shape).map((name) => `machine.${name}`);
  const named = PROFILE_GUIDE.flatMap(({ fields }) => fields.map(([field]) => field));
  expect(named.toSorted()).toEqual([...Object.keys(others), ...inMachine].toSorted());
});

test('the guide has no mark that is not explained, and README.md explains each', () => {
  const used = PROFILE_GUIDE.flatMap(({ fields }) =>
    fields.flatMap(([, , from]) => from.match(/\[\w+\]/g) ?? []),
  );
  expect(new Set(used)).toEqual(new Set(Object.keys(SOURCE_MARKS)));
  const legend = prose(README).split('In the last column,')[1]?.split('\n')[0] ?? '';
  expect(new Set(legend.match(/\[\w+\]/g))).toEqual(new Set(Object.keys(SOURCE_MARKS)));
});
