// @ts-check
import { appendFile, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';

/**
 * What an upload can do, and what it leaves for the watch to report.
 * @typedef {object} Upload
 * @property {string} folder
 * @property {Buffer} bytes
 * @property {Buffer} others of another file
 * @property {number} pause shorter than what a file has to stay as it is, ms
 * @property {(path: string, begun: number) => void} hurry told when something is over that had to be
 *   done before the file seemed whole; on a machine that is too busy for that nothing is to be said
 *   of it
 * @property {(path: string, bytes: Buffer) => void} whole told of what is to be reported, before it
 *   can be
 * @property {(path: string, bytes: Buffer) => Promise<void>} reported waits until it is
 */

/** Ways in which files arrive, each under the name of its turn. */
export const WAYS = [
  atOnce,
  inPieces,
  underAnotherName,
  inNewFolder,
  renamedAtOnce,
  renamedLater,
  withKnownContent,
  deletedAtOnce,
  replacedLater,
  deletedLater,
];

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function atOnce(name, { folder, bytes, whole }) {
  whole(`${name}.wav`, bytes);
  await writeFile(join(folder, `${name}.wav`), bytes);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function inPieces(name, upload) {
  upload.whole(`${name}.wav`, upload.bytes);
  await slowly(`${name}.wav`, upload);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function underAnotherName(name, upload) {
  const path = join(upload.folder, `${name}.wav`);
  await slowly(`${name}.wav.part`, upload);
  upload.whole(`${name}.wav`, upload.bytes);
  await rename(`${path}.part`, path);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function inNewFolder(name, { folder, bytes, whole }) {
  const path = `albums/${name}/${name}.wav`;
  whole(path, bytes);
  await mkdir(dirname(join(folder, path)), { recursive: true });
  await writeFile(join(folder, path), bytes);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function renamedAtOnce(name, { folder, bytes, whole, hurry }) {
  const begun = performance.now();
  whole(`${name} renamed.wav`, bytes);
  await writeFile(join(folder, `${name}.wav`), bytes);
  await rename(join(folder, `${name}.wav`), join(folder, `${name} renamed.wav`));
  hurry(`${name}.wav`, begun);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function renamedLater(name, upload) {
  const { folder, bytes, whole, reported } = upload;
  await atOnce(name, upload);
  await reported(`${name}.wav`, bytes);
  whole(`${name} renamed.wav`, bytes);
  await rename(join(folder, `${name}.wav`), join(folder, `${name} renamed.wav`));
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function withKnownContent(name, { folder, others, whole }) {
  whole(`${name}.wav`, others);
  await writeFile(join(folder, `${name}.wav`), others);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function deletedAtOnce(name, { folder, bytes, hurry }) {
  const begun = performance.now();
  await writeFile(join(folder, `${name}.wav`), bytes);
  await rm(join(folder, `${name}.wav`));
  hurry(`${name}.wav`, begun);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function replacedLater(name, upload) {
  const { folder, bytes, whole, reported } = upload;
  await atOnce(name, upload);
  await reported(`${name}.wav`, bytes);
  const replaced = Buffer.from(bytes);
  replaced.writeInt16LE(1000, 1000);
  whole(`${name}.wav`, replaced);
  await writeFile(join(folder, `${name}.wav`), replaced);
}

/** @type {(name: string, upload: Upload) => Promise<void>} */
async function deletedLater(name, upload) {
  await atOnce(name, upload);
  await upload.reported(`${name}.wav`, upload.bytes);
  await rm(join(upload.folder, `${name}.wav`));
}

/** @type {(path: string, upload: Upload) => Promise<void>} */
async function slowly(path, { folder, bytes, pause, hurry }) {
  const piece = Math.ceil(bytes.length / 3);
  for (let at = 0; at < bytes.length; at += piece) {
    const begun = performance.now();
    if (at > 0) await setTimeout(pause);
    await appendFile(join(folder, path), bytes.subarray(at, at + piece));
    hurry(path, begun);
  }
}
