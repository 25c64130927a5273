import { UsageError } from '../errors.js';
import { fieldName } from '../profile/field-name.js';
import { issueTexts } from '../profile/issue-text.js';
import { type ProfileFile, parseProfile, readProfile } from '../profile/profile-file.js';
import { SHEET_FIELDS, type Sheet, sheetSchema } from './sheet-schema.js';

const KIND = 'side sheet';

/** A sheet that is right by itself: what it says of files and of a profile is not yet checked. */
export interface SheetFile {
  /** As it is to be shown. */
  readonly path: string;
  readonly sheet: Sheet;
  /** Where something stands: `album.json:12: sides[0].tracks[2].gapSeconds`. */
  readonly placeOf: (path: readonly PropertyKey[]) => string;
}

/** @throws UsageError that says all that is wrong, each with path and place */
export async function readSheet(path: string, shownPath = path): Promise<SheetFile> {
  return checked(await readProfile(path, shownPath, KIND));
}

/** The same of a text that was read already. */
export function parseSheet(path: string, text: string): SheetFile {
  return checked(parseProfile(path, text, KIND));
}

function checked(file: ProfileFile): SheetFile {
  const placeOf = (path: readonly PropertyKey[]) => placeIn(file, path);
  const result = sheetSchema.safeParse(file.value);
  if (!result.success) {
    const texts = issueTexts(result.error, file.value, SHEET_FIELDS, placeOf, 'sheet');
    throw new UsageError(texts.join('\n'));
  }
  const contradictions = contradictionsIn(result.data);
  if (contradictions.length > 0) {
    const texts = contradictions.map(({ path, text }) => `${placeOf(path)}: ${text}`);
    throw new UsageError(texts.join('\n'));
  }
  return { path: file.path, sheet: result.data, placeOf };
}

interface Contradiction {
  readonly path: readonly PropertyKey[];
  readonly text: string;
}

/** What no field can say of itself. */
function contradictionsIn({ sides }: Sheet): Contradiction[] {
  const names = sides.map(({ name }) => name);
  return sides.flatMap(({ name, tracks }, side): Contradiction[] => [
    ...(names.indexOf(name) === side
      ? []
      : [
          {
            path: ['sides', side, 'name'],
            text: `found ${JSON.stringify(name)} again, expected a name of its own`,
          },
        ]),
    ...tracks.flatMap((track, index) => {
      const at = (path: string, text: string) => ({
        path: ['sides', side, 'tracks', index, path],
        text,
      });
      return [
        ...(track.fromSeconds !== undefined && track.fromSample !== undefined
          ? [at('fromSample', 'found fromSeconds beside it, expected one of the two')]
          : []),
        ...(track.untilSeconds !== undefined && track.untilSample !== undefined
          ? [at('untilSample', 'found untilSeconds beside it, expected one of the two')]
          : []),
        ...(index === 0 && track.marker !== undefined && track.marker !== false
          ? [
              at(
                'marker',
                'found one before the first track, expected none: there is no gap to see',
              ),
            ]
          : []),
        ...(['basePitch', 'baseWidth'] as const).flatMap((field) =>
          isAscending(track[field] ?? [])
            ? []
            : [at(field, 'found times that do not rise, expected them in order')],
        ),
      ];
    }),
  ]);
}

function isAscending(entries: readonly { readonly fromSeconds: number }[]): boolean {
  return entries.every(
    ({ fromSeconds }, index) =>
      fromSeconds > (entries[index - 1]?.fromSeconds ?? Number.NEGATIVE_INFINITY),
  );
}

function placeIn(file: ProfileFile, path: readonly PropertyKey[]): string {
  // What is missing stands where it should be: in the last of what is there.
  const lines = path.map((_, left) => file.lineOf(path.slice(0, path.length - left)));
  const line = lines.find((at) => at !== null) ?? null;
  const place = line === null ? file.path : `${file.path}:${line}`;
  return [place, fieldName(path)].filter(Boolean).join(': ');
}
