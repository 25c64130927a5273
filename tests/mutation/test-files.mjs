/**
 * The tests that a mutant of the model has to pass: its laws. Left out is what decodes sound or
 * takes seconds, since what survives runs through all of them.
 */
export const TEST_FILES = [
  'tests/model/*.test.ts',
  '!tests/model/{compare-forecasts,executed-columns}.test.ts',
];
