import { describe, expect, it } from 'vitest';
import { choosePoolSize } from '../../../cli/pool/pool-size.ts';

const MACHINE = { cores: 8, memoryBytes: 16e9 };
const codeOf = (options: Parameters<typeof choosePoolSize>[0]) => {
  try {
    choosePoolSize(options, MACHINE);
    return null;
  } catch (error) {
    return (error as { code?: string }).code;
  }
};

describe('choosePoolSize', () => {
  it('takes the cores and a quarter of the memory', () => {
    expect(choosePoolSize({}, MACHINE)).toEqual({ jobs: 8, memoryBytes: 4e9 });
  });

  it('starts no more processes than find room, and always one', () => {
    expect(choosePoolSize({ memory: '460MB' }, MACHINE).jobs).toBe(3);
    expect(choosePoolSize({}, { cores: 8, memoryBytes: 4e8 }).jobs).toBe(1);
  });

  it('takes the number and the size that it is told', () => {
    expect(choosePoolSize({ jobs: '3', memory: '1.5GiB' }, MACHINE)).toEqual({
      jobs: 3,
      memoryBytes: 1.5 * 2 ** 30,
    });
    expect(choosePoolSize({ memory: '800 mb' }, MACHINE).memoryBytes).toBe(8e8);
  });

  it.each(['0', '-1', '1.5', 'all', '1e2', '257'])('refuses --jobs %s', (jobs) => {
    expect(codeOf({ jobs })).toBe('bad-option');
  });

  it.each(['2', '2 apples', 'GB', '-1GB', '0MB', '1e3MB'])('refuses --memory %s', (memory) => {
    expect(codeOf({ memory })).toBe('bad-option');
  });
});
