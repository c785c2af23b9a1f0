import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  celsiusOf,
  fahrenheitOf,
  formatTemperature,
  parseDwellS,
  parseTemperature,
} from '../../src/ledger/heat.ts';

describe('temperatures', () => {
  it.each([
    // Fixed points of the scales: -40 is the same in both, water freezes at 32 F and boils at 212 F (NIST SP 811, B.8).
    [-40, -40],
    [0, 32],
    [100, 212],
    [204.444444444, 400],
  ])('%d C are %d F', (c, f) => {
    expect(fahrenheitOf({ value: c, unit: 'C' })).toBeCloseTo(f, 6);
    expect(celsiusOf({ value: f, unit: 'F' })).toBeCloseTo(c, 6);
  });

  it('there and back is the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1000, noNaN: true }), (value) => {
        const there = { value: fahrenheitOf({ value, unit: 'C' }), unit: 'F' } as const;
        expect(celsiusOf(there)).toBeCloseTo(value, 9);
      }),
    );
  });

  it.each([
    ['204C', 204, 'C'],
    ['204 °C', 204, 'C'],
    ['399.5f', 399.5, 'F'],
    [' 385 degF ', 385, 'F'],
  ])('%s keeps its number and unit', (text, value, unit) =>
    expect(parseTemperature(text, '--temperature')).toEqual({ value, unit }),
  );

  it.each(['', 'hot', '204K', '-5C', '0F', '2000C', '204,5C', '1e3C'])('%j is refused', (text) =>
    expect(() => parseTemperature(text, '--temperature')).toThrowError(
      expect.objectContaining({ code: 'bad-temperature' }),
    ),
  );

  it('a bare number is refused with both readings', () => {
    const error = (() => {
      try {
        return parseTemperature('400', '--temperature');
      } catch (thrown) {
        return thrown as Error;
      }
    })();
    expect(error).toMatchObject({ code: 'temperature-without-unit' });
    // 400 C = 752 F and 400 F = 204.4 C.
    for (const reading of ['400C', '752 F', '400F', '204.4 C'])
      expect((error as Error).message).toContain(reading);
  });

  it('are told in both units, as typed first', () => {
    expect(formatTemperature({ value: 400, unit: 'F' })).toBe('400 F (204.4 C)');
    expect(formatTemperature({ value: 196, unit: 'C' })).toBe('196 C (384.8 F)');
  });
});

describe('times', () => {
  it.each([
    ['60s', 60],
    ['5min', 300],
    ['1min30s', 90],
    ['1 min 30 s', 90],
    ['2.5 minutes', 150],
    ['1m 5sec', 65],
  ])('%s', (text, seconds) => expect(parseDwellS(text, '--time')).toBe(seconds));

  it.each([
    ['60', 'time-without-unit'],
    ['', 'bad-time'],
    ['0s', 'bad-time'],
    ['5h', 'bad-time'],
    ['30s 1min', 'bad-time'],
    ['2000min', 'bad-time'],
  ])('%j is %s', (text, code) =>
    expect(() => parseDwellS(text, '--time')).toThrowError(expect.objectContaining({ code })),
  );
});
