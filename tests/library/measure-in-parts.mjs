// @ts-check
// Measures a file in parts by the built package and writes what comes out, serialized, to stdout.
// Arguments: the file, JSON of the settings, seconds of a part, seconds of a place to look at.
import { serialize } from 'node:v8';
import { analysePart, kernelIsAvailable } from '../../dist/analysis/analyse-part.js';
import { readEdgeWindow } from '../../dist/analysis/edge-window.js';
import { joinParts } from '../../dist/analysis/join-parts.js';
import { partsOf } from '../../dist/analysis/parts.js';
import { withWav } from '../../dist/analysis/wav-file.js';
import { wavFrames } from '../../dist/analysis/wav-frames.js';

const [path = '', settingsText = '', partSeconds, place] = process.argv.slice(2);
const settings = JSON.parse(settingsText);
const measured = await withWav(path, async (wav) => {
  const { format, frames } = wav.file;
  const parts = [];
  for (const part of partsOf(format, frames, settings, Number(partSeconds))) {
    parts.push(await analysePart(wavFrames(wav), settings, part));
  }
  return {
    hasKernel: await kernelIsAvailable(),
    partCount: parts.length,
    summary: joinParts(parts, format, frames, settings),
    edges: await readEdgeWindow(wavFrames(wav), settings, Number(place)),
  };
});
process.stdout.write(serialize(measured));
