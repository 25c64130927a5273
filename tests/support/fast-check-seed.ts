import process from 'node:process';
import fc from 'fast-check';

/**
 * Properties try the same inputs in every run, so that a failure belongs to a change. Others are
 * tried with FURROW_SEED, an integer; a failure prints it.
 */
fc.configureGlobal({ seed: Number.parseInt(process.env['FURROW_SEED'] ?? '1', 10) });
