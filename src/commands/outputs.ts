import { join, resolve } from 'node:path';
import { WAV_CONTAINERS } from '../analysis/sound-file.js';
import { withWav } from '../analysis/wav-file.js';
import { InputError, OutputError } from '../errors.js';
import { MOTION_EXTENSION } from '../motion-file/motion-layout.js';
import type { SideInput } from '../open-side.js';
import { checkOutputFile, checkOutputFolder } from '../report/check-output.js';
import type { ClientSide } from '../report/client-side.js';
import type { Failure } from '../report/failure.js';
import { outputNames } from '../report/output-names.js';
import { safeText } from '../report/safe-text.js';
import type { TableRow } from '../report/side-table-csv.js';
import type { ToldFile } from '../report/told-file.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import { bugText } from './bug-text.js';
import { cutSheetOutput } from './cut-sheet-output.js';
import type { ReportOptions } from './forecast-options.js';
import type { StandardError } from './standard-error.js';

/** Somewhere results go besides stdout. */
export interface Output {
  /**
   * @param key what the side is known by: of a file its path, as it was found
   * @param input what it was made from
   */
  readonly side: (file: ToldFile, key: string, input: SideInput) => Promise<void>;
  readonly failure: (failure: Failure) => void;
  /** After the last. */
  readonly end: () => Promise<void>;
}

/** All outputs of a run. */
export interface Outputs {
  readonly all: readonly Output[];
  /** Hands something to each; what cannot be written is said, and the others go on. */
  readonly write: (hand: (output: Output) => Promise<void>) => Promise<void>;
  /** How often something could not be written. */
  readonly unwritten: () => number;
  /** Whether furrow itself failed to. */
  readonly hasBug: () => boolean;
}

/** What is written into a folder, a file a side. */
interface PerSide {
  readonly option: string;
  readonly folder: string | undefined;
  readonly extension: string;
  readonly write: (file: ToldFile, path: string) => Promise<void>;
}

/**
 * The outputs that the options ask for; paths that cannot be written are refused before work
 * begins.
 * @param sides what the sides are known by: of a file its path, else something that ends in a name
 * @param files the files of the run, which are never written over
 * @throws UsageError
 */
export async function openOutputs(
  options: ReportOptions,
  sides: readonly string[],
  cwd: string,
  errors: StandardError,
  files = sides,
): Promise<Outputs> {
  const all = await outputsFor(options, sides, files, cwd, errors);
  let unwritten = 0;
  let hasBug = false;
  return {
    all,
    write: async (hand) => {
      for (const output of all) {
        try {
          await hand(output);
        } catch (error) {
          // The others, and the other sides, do not suffer for it.
          unwritten += 1;
          if (error instanceof OutputError || error instanceof InputError) {
            errors.error(safeText(error.message));
          } else {
            hasBug = true;
            errors.error(bugText(error));
          }
        }
      }
    },
    unwritten: () => unwritten,
    hasBug: () => hasBug,
  };
}

async function outputsFor(
  options: ReportOptions,
  sides: readonly string[],
  files: readonly string[],
  cwd: string,
  errors: StandardError,
): Promise<Output[]> {
  const taken = {
    inputs: files.map((file) => resolve(cwd, file)),
    written: new Map<string, string>(),
  };
  const outputs: Output[] = [];
  for (const each of perSide(options, errors)) {
    if (each.folder === undefined) continue;
    // Else a shell's variable that is empty by mistake would stand for the working folder.
    const folder = each.folder === '' ? '' : resolve(cwd, each.folder);
    await checkOutputFolder(folder, { option: each.option });
    const targets = new Map(
      outputNames(sides).map((name, at) => [sides[at], join(folder, `${name}${each.extension}`)]),
    );
    for (const path of targets.values()) {
      await checkOutputFile(path, { ...taken, option: each.option });
    }
    outputs.push({
      side: async (file, key) => await each.write(file, targets.get(key) ?? key),
      failure: () => {},
      end: async () => {},
    });
  }
  if (options.html !== undefined) {
    const { htmlOutput } = await import('./html-output.js');
    outputs.push(await htmlOutput(options.html, options, sides, taken, cwd));
  }
  if (options.reel !== undefined) {
    const { reelOutput } = await import('./reel-output.js');
    outputs.push(await reelOutput(options.reel, options, sides, taken, cwd, errors));
  }
  for (const [option, path, output] of [
    ['--table', options.table, tableOutput],
    ['--client', options.client, clientOutput],
    ['--cutsheet', options.cutsheet, cutSheetOutput],
  ] as const) {
    if (path === undefined) continue;
    const target = resolve(cwd, path);
    await checkOutputFile(target, { ...taken, option });
    outputs.push(await output(target, options));
  }
  return outputs;
}

function perSide(options: ReportOptions, errors: StandardError): PerSide[] {
  return [
    {
      option: '--csv',
      folder: options.csv,
      extension: '.quarters.csv',
      write: async (file, path) => {
        const { quartersCsv } = await import('../report/quarters-csv.js');
        await writeFileAtomic(path, quartersCsv(file));
      },
    },
    {
      option: '--markers',
      folder: options.markers,
      extension: '.markers.csv',
      write: async (file, path) => {
        const { markersCsv } = await import('../report/markers-csv.js');
        await writeFileAtomic(path, markersCsv(file, options.units));
      },
    },
    {
      option: '--cue',
      folder: options.cue,
      extension: '.wav',
      write: async (file, path) => await writeCue(file, path, options, errors),
    },
    {
      option: '--save-motion',
      folder: options.saveMotion,
      extension: MOTION_EXTENSION,
      write: async (file, path) => {
        const { encodeMotion } = await import('../motion-file/encode-motion.js');
        const { motionToSave } = await import('../motion-file/motion-to-save.js');
        await writeFileAtomic(path, encodeMotion(motionToSave(file)));
      },
    },
  ];
}

async function writeCue(
  file: ToldFile,
  path: string,
  { units }: ReportOptions,
  errors: StandardError,
): Promise<void> {
  const [source] = file.sources;
  if (file.readFrom === 'motion' || source === undefined) {
    errors.notice(
      `${safeText(file.name)}: a saved motion carries no sound to mark; --cue left out`,
    );
    return;
  }
  if (!WAV_CONTAINERS.some((container) => container === source.container)) {
    errors.notice(
      `${safeText(file.name)}: marks are written into copies of WAV files, and this is ` +
        `${source.container}; --cue left out, --markers writes them as CSV`,
    );
    return;
  }
  const { writeCueCopy } = await import('../report/cue-copy/write-cue-copy.js');
  const { hotSpotMarks } = await import('../report/cue-copy/hot-spot-marks.js');
  await withWav(source.path, async (wav) => {
    await writeCueCopy(wav, path, hotSpotMarks(file, units));
  });
}

async function tableOutput(path: string): Promise<Output> {
  const { tableCsv, tableRow } = await import('../report/side-table-csv.js');
  const rows: TableRow[] = [];
  return {
    side: async (file) => {
      rows.push(tableRow(file));
    },
    failure: (failure) => {
      rows.push(tableRow(failure));
    },
    end: async () => await writeFileAtomic(path, tableCsv(rows)),
  };
}

async function clientOutput(path: string): Promise<Output> {
  const { clientSide } = await import('../report/client-side.js');
  const { clientText } = await import('../report/client-text.js');
  const sides: ClientSide[] = [];
  const failures: Failure[] = [];
  return {
    side: async (file) => {
      sides.push(clientSide(file));
    },
    failure: (failure) => {
      failures.push(failure);
    },
    end: async () => await writeFileAtomic(path, clientText(sides, failures)),
  };
}
