import { describe, expect, it } from 'vitest';
import { doSteps, doStepsGivingWay, type Steps } from '../../src/sheet/steps.ts';

function* count(to: number, seen: number[]): Steps<string> {
  for (let at = 0; at < to; at += 1) {
    seen.push(at);
    yield;
  }
  return 'done';
}

describe('long work', () => {
  it('comes to the same with and without rests', async () => {
    let asked = 0;
    const giveWay = () => {
      asked += 1;
      return asked % 2 === 0 ? Promise.resolve() : undefined;
    };
    expect(doSteps(count(5, []))).toBe('done');
    expect(await doStepsGivingWay(count(5, []), giveWay)).toBe('done');
    expect(asked).toBe(5);
  });

  it.each([
    [
      'throws',
      () => {
        throw new Error('ended');
      },
    ],
    ['rejects', () => Promise.reject(new Error('ended'))],
  ])('ends where what is asked for a rest %s', async (_, end) => {
    const seen: number[] = [];
    await expect(
      doStepsGivingWay(count(5, seen), () => (seen.length < 3 ? undefined : end())),
    ).rejects.toThrow('ended');
    expect(seen).toEqual([0, 1, 2]);
  });
});
