import { basename } from 'node:path';
import type { TrackFile } from '../program/program-side.js';
import type { Misfit } from './hand-settings.js';
import type { CutTrack } from './lay-tracks.js';
import type { SheetTrack } from './sheet-schema.js';

/**
 * Which frames of its file a track is; seconds are rounded to a frame.
 * @param misfits takes what is not in the file
 */
export function cutTrack(
  track: SheetTrack,
  index: number,
  file: TrackFile,
  misfits: Misfit[],
): CutTrack {
  const { sampleRate } = file.format;
  const frameOf = (seconds: number | undefined) =>
    seconds === undefined ? undefined : Math.round(seconds * sampleRate);
  const first = track.fromSample ?? frameOf(track.fromSeconds);
  const end = track.untilSample ?? frameOf(track.untilSeconds);
  const firstFrame = first ?? 0;
  const endFrame = end ?? file.frames;
  const fromField = track.fromSample === undefined ? 'fromSeconds' : 'fromSample';
  const untilField = track.untilSample === undefined ? 'untilSeconds' : 'untilSample';
  const refuse = (field: string, text: string) =>
    misfits.push({ track: index, path: [field], text });
  const length = `${file.frames} samples or ${secondsText(file.frames / sampleRate)} s`;
  if (endFrame > file.frames) {
    refuse(untilField, `found ${track[untilField]}, ${file.path} has ${length}`);
  } else if (firstFrame >= endFrame) {
    const text = `found ${track[fromField] ?? 0}, expected less than where the track ends`;
    refuse(first === undefined ? untilField : fromField, text);
  }
  const seconds = (endFrame - firstFrame) / sampleRate;
  const fades = (track.fadeInSeconds ?? 0) + (track.fadeOutSeconds ?? 0);
  if (seconds > 0 && fades > seconds) {
    const field = track.fadeInSeconds === undefined ? 'fadeOutSeconds' : 'fadeInSeconds';
    refuse(field, `found fades of ${fades} s in all, the track lasts ${secondsText(seconds)} s`);
  }
  return { track, name: track.name ?? stemOf(file.path), file, firstFrame, endFrame };
}

/** A file's name without its extension. */
function stemOf(path: string): string {
  return basename(path).replace(/(?<=.)\.[^.]*$/u, '');
}

function secondsText(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}
