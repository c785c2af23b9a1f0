import { execFileSync, spawn } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { planInputs } from '../../../cli/inputs/plan-inputs.ts';
import { createArtworkReader } from '../../../cli/inputs/read-artworks.ts';
import type { ByteStream } from '../../../cli/io.ts';
import { writeZip } from '../../../fixtures/byte-writers/write-zip.ts';
import { makeFolder } from '../temp-folder.ts';

const never = new AbortController().signal;

function input(...parts: string[]): ByteStream {
  return {
    isTTY: false,
    stop: () => undefined,
    async *[Symbol.asyncIterator]() {
      for (const part of parts) yield Buffer.from(part);
    },
  };
}

/** What the artworks of some words read as: their text, or the code of the error. */
async function readAll(cwd: string, words: readonly string[], stdin = input()): Promise<string[]> {
  const { planned } = await planInputs(words, { cwd, recursive: false, signal: never });
  const reader = createArtworkReader(stdin, never);
  const texts: string[] = [];
  for (const artwork of planned.flatMap(({ artworks }) => artworks))
    texts.push(
      await reader.read(artwork).then(
        (bytes) => Buffer.from(bytes).toString(),
        (error) => error.code,
      ),
    );
  return texts;
}

describe('reading artworks', () => {
  it('gives the bytes of files, entries and standard input', async () => {
    const pack = writeZip([
      { name: 'a.png', content: 'first' },
      { name: 'b.png', content: 'second', crc32: 7 },
      { name: 'c.png', content: 'third' },
    ]);
    const cwd = makeFolder({ 'pear.png': 'pear', 'pack.zip': pack });
    expect(await readAll(cwd, ['pack.zip', 'pear.png', '-'], input('from ', 'stdin'))).toEqual([
      'first',
      'archive-damaged',
      'third',
      'pear',
      'from stdin',
    ]);
  });

  it('waits for no standard input where an interrupt came before', async () => {
    const silent = {
      ...input(),
      [Symbol.asyncIterator]: () => ({ next: () => new Promise<never>(() => {}) }),
    };
    const { planned } = await planInputs(['-'], { cwd: '.', recursive: false, signal: never });
    const reader = createArtworkReader(silent, AbortSignal.abort('early'));
    await expect(reader.read(planned[0]!.artworks[0]!)).rejects.toBe('early');
  });

  it('reads a pipe that has a name to its end', async () => {
    const cwd = makeFolder();
    execFileSync('mkfifo', [join(cwd, 'pipe')]);
    // Another process: opening a pipe to write waits until somebody reads.
    spawn('sh', ['-c', 'printf "through the pipe" > pipe'], { cwd });
    expect(await readAll(cwd, ['pipe'])).toEqual(['through the pipe']);
  });

  it('waits for what comes late through it, and gives up where nobody writes', async () => {
    const cwd = makeFolder();
    for (const name of ['late', 'left']) execFileSync('mkfifo', [join(cwd, name)]);
    spawn('sh', ['-c', 'sleep 1; (printf one; sleep 1; printf two) > late'], { cwd });
    expect(await readAll(cwd, ['late', 'left'])).toEqual(['onetwo', 'cannot-read']);
  }, 60_000);

  it('reads more than a pipe holds', async () => {
    const cwd = makeFolder();
    execFileSync('mkfifo', [join(cwd, 'pipe')]);
    spawn('sh', ['-c', 'head -c 3000000 /dev/zero > pipe'], { cwd });
    expect((await readAll(cwd, ['pipe']))[0]).toHaveLength(3_000_000);
  });

  it('stops at the limit of what never ends', async () => {
    const part = 'x'.repeat(1 << 20);
    let given = 0;
    const endless: ByteStream = {
      isTTY: false,
      stop: () => undefined,
      async *[Symbol.asyncIterator]() {
        const bytes = Buffer.from(part);
        for (;;) {
          given += 1;
          yield bytes;
        }
      },
    };
    expect(await readAll(makeFolder(), ['-'], endless)).toEqual(['too-many-bytes']);
    expect(given).toBe(Math.floor(1_250_000_000 / (1 << 20)) + 1);
  });

  it('says so where a file or an archive changed since it was found', async () => {
    const cwd = makeFolder({
      'pear.png': 'pear',
      'pack.zip': writeZip([{ name: 'a.png', content: 'first' }]),
    });
    const { planned } = await planInputs(['pear.png', 'pack.zip'], { cwd, recursive: false, signal: never });
    rmSync(join(cwd, 'pear.png'));
    writeFileSync(join(cwd, 'pack.zip'), writeZip([{ name: 'b.png', content: 'other' }]));
    const reader = createArtworkReader(input(), never);
    for (const artwork of planned.flatMap(({ artworks }) => artworks))
      await expect(reader.read(artwork)).rejects.toMatchObject({ code: 'cannot-read' });
  });

  it('an interrupt ends the waiting for standard input', async () => {
    const controller = new AbortController();
    let stop: () => void = () => undefined;
    const waiting: ByteStream = {
      isTTY: true,
      stop: () => stop(),
      [Symbol.asyncIterator]: () => ({
        next: () =>
          new Promise<IteratorReturnResult<undefined>>((resolve) => {
            stop = () => resolve({ done: true, value: undefined });
          }),
      }),
    };
    const { planned } = await planInputs(['-'], { cwd: '.', recursive: false, signal: never });
    const reading = createArtworkReader(waiting, controller.signal).read(planned[0]!.artworks[0]!);
    const reason = { interruptedBy: 'SIGINT' };
    setTimeout(() => controller.abort(reason), 10);
    await expect(reading).rejects.toBe(reason);
  });
});
