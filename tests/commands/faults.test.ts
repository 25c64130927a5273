// Disks that fail or are full, and whatever is no file.
import { spawnSync } from 'node:child_process';
import { mkdir, symlink } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { execa } from 'execa';
import { describe, expect, onTestFinished, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { intakeSchema } from '../../src/report/intake-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow, SHELL_COMMAND } from '../support/run-furrow.js';
import { programWav, type SideFile, silentWav } from '../support/side-files.js';

/** What each command is to say of the same inputs. */
const COMMANDS = [
  ['forecast', forecastSchema.shape.failures],
  ['intake', intakeSchema.shape.failures],
] as const;

describe.each(COMMANDS)('furrow %s', (command, failures) => {
  async function failed(cwd: string, paths: readonly string[], env = {}) {
    const flags = ['--json', '--quiet', '--no-discovery', '--jobs', '2'];
    const ran = await runFurrow([command, ...paths, ...flags], {
      cwd,
      env: { NO_COLOR: '1', ...env },
      timeout: 30_000,
    });
    const found = failures.parse(JSON.parse(ran.stdout).failures);
    return { ...ran, found: found.map(({ path, code }) => `${path}: ${code}`) };
  }

  // 2 s are read by the process itself, 50 s by threads.
  test.each([
    ['short', programWav(2)],
    ['long', silentWav(50)],
  ])('says of a %s file that the disk cannot read to its end, and goes on', async (_, bytes) => {
    const sides: SideFile[] = ['1.wav', '2 fails.wav', '3.wav'].map((name) => [name, bytes]);
    const disk = new URL('../support/failing-disk.mjs', import.meta.url).href;
    const cwd = await filledFolder(sides);
    const ran = await failed(cwd, ['.'], { NODE_OPTIONS: `--import ${disk}` });
    expect(ran.found).toEqual(['2 fails.wav: read-failed']);
    expect(ran.stderr).toContain('2 fails.wav: reading it failed; check the disk');
    expect(ran.stdout).toContain('"path": "3.wav"');
    expect(ran.exitCode).toBe(3);
  });

  test('waits for nothing that is no file, and says so', async () => {
    const cwd = await filledFolder([
      ['lp/1.wav', programWav(1)],
      ['secret.wav', 'secret'],
    ]);
    const at = (name: string) => join(cwd, 'lp', name);
    spawnSync('mkfifo', [at('2 pipe.wav')]);
    const server = createServer();
    await new Promise<void>((listening) => server.listen(at('3 socket.wav'), listening));
    onTestFinished(() => void server.close());
    await symlink('/dev/zero', at('4 device.wav'));
    await mkdir(at('5 folder.wav'));
    await symlink('../secret.wav', at('6 link.wav'));
    await symlink('7 round.wav', at('7 round.wav'));
    await symlink('nowhere', at('8 gone.wav'));
    await symlink('..', at('9 up'));
    const codes = [
      '2 pipe.wav: not-a-file',
      '3 socket.wav: not-a-file',
      '4 device.wav: link-outside',
      '6 link.wav: link-outside',
      '7 round.wav: link-loop',
      '8 gone.wav: not-found',
      '9 up: link-outside',
    ];
    const refused = await failed(cwd, ['lp']);
    expect(refused.found).toEqual(codes.map((code) => `lp/${code}`));
    expect(refused.exitCode).toBe(3);
    const followed = await failed(cwd, ['lp', '--follow']);
    expect(followed.found).toEqual([
      'lp/2 pipe.wav: not-a-file',
      'lp/3 socket.wav: not-a-file',
      'lp/4 device.wav: not-a-file',
      'lp/6 link.wav: not-wav',
      'lp/7 round.wav: link-loop',
      'lp/8 gone.wav: not-found',
      'lp/9 up: link-loop',
    ]);
  });
});

/** Whether this user may mount a file system in a namespace of its own. */
const MOUNTS = spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'tmpfs', '/mnt']).status === 0;

describe.skipIf(!MOUNTS)('a disk that is full (where mounting one is allowed)', () => {
  /** Runs a script where `out` is a disk of 256 KiB. */
  async function onSmallDisk(script: string) {
    const cwd = await filledFolder([
      ['in/1.wav', programWav(3)],
      ['out/nothing', ''],
    ]);
    const args = ['-rm', 'sh', '-c', `mount -t tmpfs -o size=256k tmpfs out\n${script}`];
    const options = { cwd, reject: false, timeout: 30_000 } as const;
    const { stdout, stderr } = await execa('unshare', args, options);
    return { lines: stdout.split('\n'), stderr };
  }

  const FILL = 'head -c 300000 /dev/zero > out/filler 2> /dev/null';

  test('leaves the older results, nothing unfinished, and is 4', async () => {
    const flags = '--quiet --no-discovery --json --csv out --save-motion out > /dev/null';
    const { lines, stderr } = await onSmallDisk(`
      echo old > out/1.quarters.csv; ${FILL}
      ${SHELL_COMMAND} forecast in/1.wav ${flags}
      echo "code $?"; cat out/1.quarters.csv; ls -A out`);
    expect(lines).toEqual(['code 4', 'old', '1.quarters.csv', 'filler']);
    expect(stderr).toContain('1.quarters.csv: cannot be written, the disk is full; the file that');
    expect(stderr).toContain('1.motion: cannot be written, the disk is full; nothing was written');
  });

  test('has a watch go on, and write its reports when there is room again', async () => {
    const flags = '--quiet --no-discovery --settle 0.1 > events';
    const { lines } = await onSmallDisk(`
      ${FILL}
      ${SHELL_COMMAND} intake --watch in --out out ${flags} & watch=$!
      until grep -q unwritten events; do sleep 0.05; done
      ls -A out; rm out/filler
      until grep -q -e '"examined"' -e same-content events; do sleep 0.05; done
      kill -TERM $watch; wait $watch; echo "code $?"; ls -A out`);
    expect(lines).toEqual(['filler', 'code 0', '1.wav.furrow.json']);
  });
});
