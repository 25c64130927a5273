// Where WebAssembly has no vectors the pass is its plain definition. That pieces of six seconds join
// is asked of the built package, without vectors, in tests/library.
import { describe, expect, test } from 'vitest';
import { joinParts } from '../../src/analysis/join-parts.js';
import { wholeProgram } from '../../src/analysis/parts.js';
import { PlainAnalyser } from '../../src/analysis/plain-analyser.js';
import { programOf } from '../../src/analysis/program.js';
import { noise } from '../support/signals.js';
import { expectAlike } from './alike.js';
import { figuresOf } from './figures-of.js';
import { framesOf, settingsWith, summaryOfFrames } from './summary-of.js';

const RATE = 44_100;
const FORMAT = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
const SIZE = 4;
// Without a tolerance: how well the two agree on the loose approach is asked of one-pass.test.ts.
const SETTINGS = settingsWith({ rpm: 90, speedTolerance: 0 });

function analyserOf(frames: number): PlainAnalyser {
  const program = programOf(FORMAT, frames);
  return new PlainAnalyser(program, wholeProgram(program, SETTINGS), SETTINGS);
}

describe('the plain pass over a program', () => {
  test('is alike to the kernel’s, in blocks of any size', async () => {
    const frames = Math.round(0.25 * RATE);
    const bytes = framesOf({ left: noise(frames, 1, 0.3), right: noise(frames, 2, 0.3) }, FORMAT);
    const analyser = analyserOf(frames);
    for (let at = 0; at < bytes.length; at += 3000 * SIZE) {
      expect(analyser.push(bytes.subarray(at, at + 3000 * SIZE))).toBe(-1);
    }
    const summary = joinParts([analyser.finish()], FORMAT, frames, SETTINGS);
    const passed = await summaryOfFrames(bytes, FORMAT, SETTINGS);
    expectAlike(figuresOf(summary), figuresOf(passed));
  });

  test('names the first frame that is no number', () => {
    const format = { ...FORMAT, encoding: 'float', bitDepth: 32 } as const;
    const program = programOf(format, 1000);
    const analyser = new PlainAnalyser(program, wholeProgram(program, SETTINGS), SETTINGS);
    const frames = new Float32Array(2 * 500);
    expect(analyser.push(new Uint8Array(frames.buffer.slice(0)))).toBe(-1);
    frames[2 * 7 + 1] = Number.NaN;
    expect(analyser.push(new Uint8Array(frames.buffer))).toBe(507);
  });
});
