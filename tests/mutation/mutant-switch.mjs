/** A mutant has been reached so often that it will not come to an end. */
export class TooManyHits extends Error {}

/** Which mutant is switched on, by its number in the bundles of bundle-tests.mjs. */
export const mutantSwitch = {
  /** None. */
  id: -1,
  hits: 0,
  mostHits: Number.POSITIVE_INFINITY,

  /** Called wherever the mutant that is on is reached. */
  isHit() {
    this.hits += 1;
    if (this.hits > this.mostHits) throw new TooManyHits(`reached ${this.hits} times`);
    return true;
  },
};
