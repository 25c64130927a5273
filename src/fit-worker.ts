import { measureJob } from './fit/fit-jobs.js';

// What a thread of a fit's pool runs; the pool finds the job by its name.
export const measure = measureJob;
