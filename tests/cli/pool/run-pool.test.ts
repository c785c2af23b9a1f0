import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { PlacedInput } from '../../../cli/commands/judge-all.ts';
import { type PoolOptions, runPool } from '../../../cli/pool/run-pool.ts';
import { makeFolder } from '../temp-folder.ts';

/** A child that ends at `ends.png` and where it should stop, never answers to `slow.png`, and does the rest at once. */
const CHILD = `process.on('message', ({ kind, artwork }) => {
  if (kind === 'set-up') process.send({ kind: 'ready' });
  else if (kind === 'stop' || artwork.path === 'ends.png') process.kill(process.pid, 'SIGKILL');
  else if (artwork.path !== 'slow.png')
    process.send({ kind: 'answer', answer: { kind: 'judged', judged: null }, residentBytes: 0 });
});`;

function endingsOf(files: Readonly<Record<string, string | Uint8Array>>, options: Partial<PoolOptions> = {}) {
  const cwd = makeFolder({ 'child.mjs': CHILD, ...files });
  const inputs = Object.keys(files).map((name) => {
    const artwork = { path: name, origin: { kind: 'file', file: join(cwd, name) } };
    return { artwork, place: {} } as unknown as PlacedInput;
  });
  const endings = runPool(inputs, {
    program: join(cwd, 'child.mjs'),
    setUp: {} as never,
    size: { jobs: 2, memoryBytes: 1_000_000_000 },
    maxSeconds: 60,
    signal: new AbortController().signal,
    handed: () => undefined,
    ended: () => undefined,
    ...options,
  });
  return Promise.all(inputs.map((input) => endings.get(input)));
}

/** The first bytes of a PNG that states this width and height. */
function headOf(sidePx: number, bytes: number): Uint8Array {
  const head = Buffer.alloc(bytes);
  head.write('89504e470d0a1a0a0000000d49484452', 'hex');
  head.writeUInt32BE(sidePx, 16);
  head.writeUInt32BE(sidePx, 20);
  head.writeUInt8(8, 24);
  return head;
}

describe('runPool', () => {
  it('tells of an artwork that ends its process', async () => {
    expect(await endingsOf({ 'ends.png': 'x' })).toEqual([{ kind: 'crashed', by: 'SIGKILL' }]);
  });

  it('calls an artwork interrupted whose process had to be ended for the interrupt, not crashed', async () => {
    const stop = new AbortController();
    const handed = () => void setTimeout(() => stop.abort(), 500);
    expect(await endingsOf({ 'slow.png': 'x' }, { signal: stop.signal, handed })).toEqual([
      { kind: 'interrupted' },
    ]);
  });

  it('judges what needs more than all the memory, once it is alone', async () => {
    const [a, b] = [25, 1].map((pixels) => 150e6 + 33 + pixels * 4 * 2.6) as [number, number];
    // The needs of the first two, given back, leave a little less than nothing in binary fractions.
    expect(a + b - a - b).not.toBe(0);
    const done = { kind: 'judged', judged: null };
    expect(
      await endingsOf({ 'a.png': headOf(5, 33), 'b.png': headOf(1, 33), 'large.png': headOf(60_000, 32) }),
    ).toEqual([done, done, done]);
  });
});
