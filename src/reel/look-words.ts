import type { Look } from './worst-second.js';

/** What is hard in a second, in a word or two. */
export function lookName(look: Look): string {
  switch (look) {
    case 'land':
      return 'least land';
    case 'width':
      return 'narrowest groove';
    case 'facet':
      return 'steepest groove';
    case 'bend':
      return 'tightest bends';
  }
}

/** What the eye, the ear or the microscope is to find out; common practice, no published source. */
export function lookFor(look: Look): string {
  switch (look) {
    case 'land':
      return 'Measure the wall that is left between this turn and the one outside it, where it is thinnest; less than told: the lathe is further off than the profile has it, or the level is not the one told.';
    case 'width':
      return 'Measure the groove where it is narrowest; look whether it is cut without a break, and play it: a stylus that is thrown out leaves here first.';
    case 'facet':
      return 'Look for rough or torn walls and a frayed horn: the back of the cutting stylus rubs here.';
    case 'bend':
      return 'Play it with the tip that the record will meet and listen for spitting sibilants: the tip is wider than the bends here.';
  }
}
