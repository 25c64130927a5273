import * as z from 'zod';
import { FAILURE_CODES } from '../../report/failure.js';
import { INTAKE_IDS } from '../broken-rule.js';

export const WATCH_FORMAT = 'furrow.watch/1';

const path = z.string().describe('in the folder that is watched, with /');
const output = z.string().describe('the report, in the folder of reports');
const verdict = z.enum(['clear', 'caution', 'fault']);
const count = z.int().nonnegative();
const message = z.string();

/** An event of a type, with what it tells besides. */
function event<const T extends string, S extends z.ZodRawShape>(type: T, words: string, shape: S) {
  return z
    .strictObject({
      format: z.literal(WATCH_FORMAT),
      type: z.literal(type),
      elapsedSeconds: z.number().describe('s since the start, to 0.001'),
      ...shape,
    })
    .describe(words);
}

/** What a line of `furrow intake --watch` is. */
export const watchLineSchema = z
  .discriminatedUnion('type', [
    event('started', 'The watch begins; known: files that have a report from an earlier run.', {
      known: count,
    }),
    event('caught-up', 'All that was there has been seen; unchanged: not to be read again.', {
      files: count,
      unchanged: count,
    }),
    event('arrived', 'A file without a report; it is waited for until it is whole.', { path }),
    event('changed', 'A file is not as its report says, or is to be tried again.', { path }),
    event('examined', 'A file was examined and its report is in its place.', {
      path,
      output,
      verdict,
      worst: z.enum(INTAKE_IDS).nullable().describe('id of the finding to look at first'),
    }),
    event('same-content', 'The same of a file whose bytes were examined before, as `from`.', {
      path,
      output,
      verdict,
      from: path,
    }),
    event('failed', 'A file cannot be read or is not fit; its report says so.', {
      path,
      output,
      code: z.enum(FAILURE_CODES),
      message,
    }),
    event('deleted', 'A file is no longer there, by this name at least; its report stays.', {
      path,
    }),
    event('unwritten', 'A report could not be written; it will be tried again.', {
      path,
      output,
      message,
    }),
    event('trouble', 'Something makes the watch slower, or blind in places; it goes on.', {
      message,
    }),
    event('stopping', 'The watch was asked to end; what is in work is finished first.', {
      inWork: count,
      waiting: count,
    }),
    event('stopped', 'The watch has ended: the last line.', {
      examined: count,
      sameContent: count,
      failed: count,
      unwritten: count.describe('files whose report is not written'),
    }),
  ])
  .describe('One line: something that happened in a folder that is watched.');

type WatchLine = z.infer<typeof watchLineSchema>;
type Told<L> = L extends unknown ? Omit<L, 'format' | 'elapsedSeconds'> : never;
/** An event but for what every line has. */
export type WatchEvent = Told<WatchLine>;
