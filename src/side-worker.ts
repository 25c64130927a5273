import { sideJobs } from './side-jobs.js';

// What a thread of the pool runs; the pool finds each job by its name.
export const { part, parts, tightest, file } = sideJobs;
