import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';

let declared = [];
let suites = [];
/** Titles of the suites that are around what is declared. */
let around = [];

/** Runs `load`, which imports a test file, and gives the tests that it declares. */
export async function declaredBy(load) {
  [declared, suites, around] = [[], [], []];
  await load();
  // One at a time: a suite may wait for something in its midst.
  for (const { titles, declare } of suites) {
    around = titles;
    await declare();
  }
  return declared;
}

export const test = eachable((title, run) => {
  declared.push({ name: [...around, title].join(' '), run });
});

export const it = test;

export const describe = eachable((title, declare) => {
  suites.push({ titles: [...around, title], declare });
});

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = Object.assign(
  (value, message) => chai.expect(value, message),
  chai.expect,
  globalThis[ASYMMETRIC_MATCHERS_OBJECT],
  { extend: (matchers) => chai.expect.extend(expect, matchers) },
);
globalThis[GLOBAL_EXPECT] = expect;
setState({ assertionCalls: 0, isExpectingAssertions: false }, expect);

/** Rows are told apart by their number: a title need only be no other's. */
function eachable(declare) {
  const each = (rows) => (title, run) => {
    for (const [index, row] of rows.entries()) {
      declare(`${title} ${index}`, () => (Array.isArray(row) ? run(...row) : run(row)));
    }
  };
  return Object.assign(declare, { each });
}
