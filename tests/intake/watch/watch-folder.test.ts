import { execFile } from 'node:child_process';
import { appendFile, mkdir, rename, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { invented, reportsIn, watching } from '../../support/watching.js';

describe('a file that arrives', () => {
  test('is examined once size and time have stayed as they are for the settle time', async () => {
    let clock = 0;
    const watch = await watching({ settle: 50, now: () => clock });
    const path = join(watch.folder, '1.wav');
    await writeFile(path, 'a');
    await watch.until(() => watch.pathsOf('arrived').length > 0);
    for (const more of ['b', 'c', 'd']) {
      await appendFile(path, more);
      // Long enough since it was seen, but then it was not yet as it is now.
      clock += 50;
      await setTimeout(120);
      expect(watch.pathsOf('examined')).toEqual([]);
    }
    await watch.until(() => {
      clock += 1;
      return watch.pathsOf('examined').length > 0;
    });
    await watch.stop();
    expect(watch.events.map(({ type }) => type)).toEqual([
      'started',
      'caught-up',
      'arrived',
      'examined',
      'stopping',
      'stopped',
    ]);
    const reports = await reportsIn(watch.out);
    expect([...reports.keys()]).toEqual(['1.wav.furrow.json']);
    expect(reports.get('1.wav.furrow.json')?.file).toMatchObject({ path: '1.wav', bytes: 4 });
  });

  test('under a temporary name is left alone until it has its own', async () => {
    const watch = await watching();
    const names = ['1.wav.part', '.2.wav', '~3.wav', '4.wav.crdownload', '5.wav.tmp', '6.wav~'];
    for (const name of names) await writeFile(join(watch.folder, name), name);
    await rename(join(watch.folder, '1.wav.part'), join(watch.folder, '1.wav'));
    await watch.until(() => watch.pathsOf('examined').length > 0);
    await watch.stop();
    expect(watch.pathsOf('arrived')).toEqual(['1.wav']);
  });

  test('in folders made later has its report in the same folder', async () => {
    const watch = await watching();
    await mkdir(join(watch.folder, 'a/b'), { recursive: true });
    await writeFile(join(watch.folder, 'a/b/1.wav'), '1');
    await watch.until(() => watch.pathsOf('examined').length === 1);
    await writeFile(join(watch.folder, 'a/b/2.wav'), '2');
    await watch.until(() => watch.pathsOf('examined').length === 2);
    await rename(join(watch.folder, 'a'), join(watch.folder, 'c'));
    await watch.until(() => watch.pathsOf('deleted').length === 2);
    expect([...(await reportsIn(watch.out)).keys()].sort()).toEqual([
      'a/b/1.wav.furrow.json',
      'a/b/2.wav.furrow.json',
    ]);
    await watch.until(() => watch.pathsOf('same-content').length === 2);
  });

  test('where the system tells nothing is found by looking at everything', async () => {
    const watch = await watching({ lookAgain: 50 });
    await symlink(watch.folder, join(watch.out, 'by another way'));
    await writeFile(join(watch.out, 'by another way', '1.wav'), '1');
    await watch.until(() => watch.pathsOf('examined').length === 1);
  });
});

test('a folder that goes away takes no file for deleted, and is watched again when it is back', async () => {
  const watch = await watching({ lookAgain: 50 });
  await writeFile(join(watch.folder, '1.wav'), 'one');
  await watch.until(() => watch.pathsOf('examined').length === 1);
  await rename(watch.folder, `${watch.folder} elsewhere`);
  await watch.until(() => watch.events.some(({ type }) => type === 'trouble'));
  await rename(`${watch.folder} elsewhere`, watch.folder);
  await writeFile(join(watch.folder, '2.wav'), 'two');
  await watch.until(() => watch.pathsOf('examined').length === 2);
  expect(watch.pathsOf('deleted')).toEqual([]);
});

describe('a file that was examined', () => {
  test('is examined again when it has changed, and told when it goes and comes back', async () => {
    const watch = await watching();
    const path = join(watch.folder, '1.wav');
    await writeFile(path, 'one');
    await watch.until(() => watch.pathsOf('examined').length === 1);
    await writeFile(path, 'two');
    await watch.until(() => watch.pathsOf('examined').length === 2);
    await rm(path);
    await watch.until(() => watch.pathsOf('deleted').length === 1);
    expect(watch.pathsOf('changed')).toEqual(['1.wav']);
    expect((await reportsIn(watch.out)).size).toBe(1);
    await writeFile(path, 'two');
    await watch.until(() => watch.pathsOf('same-content').length === 1);
    expect(watch.pathsOf('arrived')).toEqual(['1.wav', '1.wav']);
  });

  test.each([
    ['copied', '2.wav'],
    ['only touched', '1.wav'],
  ])('and is %s is not examined again', async (how, name) => {
    const paths: string[] = [];
    const examine = async (path: string) => {
      paths.push(path);
      return invented(path);
    };
    const watch = await watching({ examine });
    await writeFile(join(watch.folder, '1.wav'), 'one');
    await watch.until(() => watch.pathsOf('examined').length === 1);
    if (how === 'copied') await writeFile(join(watch.folder, name), 'one');
    else await utimes(join(watch.folder, name), 1, 2);
    await watch.until(() => watch.pathsOf('same-content').length === 1);
    expect(watch.events).toContainEqual(
      expect.objectContaining({ type: 'same-content', path: name, from: '1.wav' }),
    );
    expect(paths).toEqual([join(watch.folder, '1.wav')]);
    const reports = await reportsIn(watch.out);
    expect(reports.get(`${name}.furrow.json`)?.result?.path).toBe(name);
  });

  test('is examined again under another name where names make a difference', async () => {
    const watch = await watching({ isNamedAlike: () => false });
    for (const name of ['1.wav', '2.wav']) await writeFile(join(watch.folder, name), 'one');
    await watch.until(() => watch.pathsOf('examined').length === 2);
    expect(watch.pathsOf('same-content')).toEqual([]);
  });

  test('but changed meanwhile gets no report until it stays as it is', async () => {
    let times = 0;
    const watch = await watching({
      examine: async (path) => {
        times += 1;
        if (times === 1) await appendFile(path, ', and more');
        return invented(path);
      },
    });
    await writeFile(join(watch.folder, '1.wav'), 'one');
    await watch.until(() => watch.pathsOf('examined').length === 1);
    expect(times).toBe(2);
    const report = (await reportsIn(watch.out)).get('1.wav.furrow.json');
    expect(report?.file.bytes).toBe('one, and more'.length);
  });
});

describe('what cannot be examined', () => {
  test('is told with its code, each once, and the others go on', async () => {
    const watch = await watching({ lookAgain: 50 });
    const at = (name: string) => join(watch.folder, name);
    await promisify(execFile)('mkfifo', [at('pipe.wav')]);
    await writeFile(join(watch.out, '..', 'secret.wav'), 'secret');
    await symlink('../secret.wav', at('link.wav'));
    await symlink('..', at('up'));
    await symlink('round.wav', at('round.wav'));
    await mkdir(at('folder.wav'));
    await writeFile(at('good.wav'), 'good');
    await watch.until(() => watch.pathsOf('examined').length === 1);
    await watch.until(() => watch.pathsOf('failed').length === 4);
    await setTimeout(200);
    await watch.stop();
    const codes = watch.events.flatMap((event) =>
      event.type === 'failed' ? [`${event.path}: ${event.code}`] : [],
    );
    expect(codes.sort()).toEqual([
      'link.wav: link-outside',
      'pipe.wav: not-a-file',
      'round.wav: link-loop',
      'up: link-outside',
    ]);
    const reports = await reportsIn(watch.out);
    expect(reports.get('link.wav.furrow.json')).toMatchObject({
      file: { sha256: null },
      result: null,
      failure: { path: 'link.wav', code: 'link-outside' },
    });
  });

  test('but is followed where that is asked for, without going in circles', async () => {
    const watch = await watching({ follow: true });
    await mkdir(join(watch.out, '..', 'else'));
    await writeFile(join(watch.out, '..', 'else', '1.wav'), 'one');
    await symlink('../else', join(watch.folder, 'link'));
    await symlink('../in', join(watch.out, '..', 'else', 'back'));
    await watch.until(() => watch.pathsOf('examined').length === 1);
    await writeFile(join(watch.out, '..', 'else', '2.wav'), 'two');
    await watch.until(() => watch.pathsOf('examined').length === 2);
    expect(watch.pathsOf('examined')).toEqual(['link/1.wav', 'link/2.wav']);
  });

  test('because furrow failed is told as that, by its path in the folder', async () => {
    const watch = await watching({
      examine: async (path) => {
        throw new Error(`a bug at ${path}`);
      },
    });
    await writeFile(join(watch.folder, '1.wav'), 'one');
    await watch.until(() => watch.pathsOf('failed').length === 1);
    expect(watch.events.find(({ type }) => type === 'failed')).toMatchObject({
      path: '1.wav',
      code: 'crashed',
      message: expect.stringMatching(/^1\.wav: this is a bug in furrow.*a bug at 1\.wav$/),
    });
  });
});

describe('a watch that begins', () => {
  test('where another ended goes on: nothing again, nothing missed', async () => {
    const first = await watching();
    await writeFile(join(first.folder, '1.wav'), 'one');
    await mkdir(join(first.folder, 'sub'));
    await writeFile(join(first.folder, 'sub/2.wav'), 'two');
    await first.until(() => first.pathsOf('examined').length === 2);
    await first.stop();
    await writeFile(join(first.folder, '1.wav'), 'three');
    await writeFile(join(first.folder, '4.wav'), 'four');
    await rm(join(first.folder, 'sub'), { recursive: true });

    const second = await watching({ folder: first.folder, out: first.out });
    expect(second.events[0]).toMatchObject({ type: 'started', known: 2 });
    await second.until(() => second.pathsOf('examined').length === 2);
    await second.stop();
    expect(second.pathsOf('examined').sort()).toEqual(['1.wav', '4.wav']);

    const third = await watching({ folder: first.folder, out: first.out });
    expect(third.events[1]).toMatchObject({ type: 'caught-up', files: 2, unchanged: 2 });
    await third.stop();
    expect(third.events).toHaveLength(4);
  });

  test('with other settings examines all again', async () => {
    const first = await watching();
    await writeFile(join(first.folder, '1.wav'), 'one');
    await first.until(() => first.pathsOf('examined').length === 1);
    await first.stop();
    const examinedWith = '1'.repeat(64);
    const second = await watching({ folder: first.folder, out: first.out, examinedWith });
    await second.until(() => second.pathsOf('examined').length === 1);
    const report = (await reportsIn(first.out)).get('1.wav.furrow.json');
    expect(report).toMatchObject({ examinedWith });
  });

  test('takes a damaged report for none', async () => {
    const first = await watching();
    await writeFile(join(first.folder, '1.wav'), 'one');
    await first.until(() => first.pathsOf('examined').length === 1);
    await first.stop();
    await writeFile(join(first.out, '1.wav.furrow.json'), '{"format": "furrow.watched/1", ');
    const second = await watching({ folder: first.folder, out: first.out });
    await second.until(() => second.pathsOf('examined').length === 1);
    expect((await reportsIn(first.out)).size).toBe(1);
  });

  test('tries again what may no longer stand in the way, and only that', async () => {
    const failing = (code: 'not-wav' | 'no-permission') => async (path: string) => ({
      path,
      code,
      message: path,
    });
    const examined = [];
    for (const code of ['not-wav', 'no-permission'] as const) {
      const first = await watching({ examine: failing(code) });
      await writeFile(join(first.folder, '1.wav'), 'one');
      await first.until(() => first.pathsOf('failed').length === 1);
      await first.stop();
      const second = await watching({ folder: first.folder, out: first.out, settle: 1 });
      await setTimeout(150);
      await second.stop();
      examined.push(second.pathsOf('examined').length);
    }
    expect(examined).toEqual([0, 1]);
  });
});

describe('a watch that is asked to stop', () => {
  test('finishes what is in work and begins no more', async () => {
    const begun: string[] = [];
    let goOn = () => {};
    const held = new Promise<void>((resolve) => {
      goOn = resolve;
    });
    const watch = await watching({
      jobs: 2,
      examine: async (path) => {
        begun.push(path);
        await held;
        return invented(path);
      },
    });
    for (const name of ['1.wav', '2.wav', '3.wav', '4.wav']) {
      await writeFile(join(watch.folder, name), name);
    }
    await watch.until(() => begun.length === 2 && watch.pathsOf('arrived').length === 4);
    const stopped = watch.stop();
    await watch.until(() => watch.events.some(({ type }) => type === 'stopping'));
    expect(watch.events.at(-1)).toMatchObject({ inWork: 2, waiting: 2 });
    goOn();
    await stopped;
    expect(begun).toHaveLength(2);
    expect(watch.events.at(-1)).toMatchObject({ type: 'stopped', examined: 2, failed: 0 });
    expect((await reportsIn(watch.out)).size).toBe(2);
  });
});

test('a report that cannot be written is told, and written when it can be', async () => {
  const watch = await watching({ lookAgain: 100 });
  await writeFile(join(watch.out, 'sub'), 'in the way of a folder');
  await mkdir(join(watch.folder, 'sub'));
  await writeFile(join(watch.folder, 'sub/1.wav'), 'one');
  await watch.until(() => watch.pathsOf('unwritten').length > 0);
  expect(watch.pathsOf('examined')).toEqual([]);
  await rm(join(watch.out, 'sub'));
  await watch.until(
    () => watch.pathsOf('examined').length + watch.pathsOf('same-content').length > 0,
  );
  await watch.stop();
  expect(watch.events.at(-1)).toMatchObject({ type: 'stopped', unwritten: 0 });
});

test('a name that is itself told of keeps none of the others from being known by content', async () => {
  const examined: string[] = [];
  const watch = await watching({
    jobs: 1,
    isNamedAlike: (one, other) => ![one, other].some((path) => path.includes('odd')),
    examine: async (path) => {
      examined.push(path.slice(path.lastIndexOf('/') + 1));
      return invented(path);
    },
  });
  for (const [at, name] of ['1.wav', 'odd.wav', '2.wav', 'odd too.wav', '3.wav'].entries()) {
    await writeFile(join(watch.folder, name), 'one');
    await watch.until(
      () => watch.pathsOf('examined').length + watch.pathsOf('same-content').length === at + 1,
    );
  }
  expect(examined).toEqual(['1.wav', 'odd.wav', 'odd too.wav']);
});
