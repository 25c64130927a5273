import { expect, test } from 'vitest';
import { accessError, systemNameOf } from '../../src/analysis/wav-access-error.js';
import { InputError } from '../../src/errors.js';

const failing = (code: unknown) => Object.assign(new Error('invented'), { code });

test.each([
  ['ENOENT', 'not-found'],
  ['ENOTDIR', 'not-found'],
  ['EACCES', 'no-permission'],
  ['EISDIR', 'not-a-file'],
  ['ELOOP', 'link-loop'],
  ['EIO', 'read-failed'],
])('what the system calls %s is told as %s, with both', (name, code) => {
  const cause = failing(name);
  const error = accessError('side.wav', cause);
  expect(error).toMatchObject({ path: 'side.wav', code, cause });
  expect(error.message).toMatch(/^side\.wav: .*; .* \([A-Z]+\)$/);
  expect(error.message).toContain(`(${name})`);
});

test('what has no name of the system’s is a failed read, of an unknown reason', () => {
  for (const cause of [new Error('invented'), failing(5), 'invented', undefined]) {
    expect(systemNameOf(cause)).toBeUndefined();
    const error = accessError('side.wav', cause);
    expect(error.code).toBe('read-failed');
    expect(error.message).toContain('(unknown reason)');
  }
});

test('a name that could not be read as text is a bad name where nothing is found', () => {
  const codes = ['ENOENT', 'EACCES'].map((name) => accessError('\uFFFD.wav', failing(name)).code);
  expect(codes).toEqual(['bad-name', 'no-permission']);
});

test('what is told already stays as it is', () => {
  const known = new InputError('side.wav', 'not-found', 'invented');
  expect(accessError('other.wav', known)).toBe(known);
});
