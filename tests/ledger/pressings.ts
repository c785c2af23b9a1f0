import type { Pressing } from '../../src/ledger/pressing.ts';

/** A record with every field, for tests to change. */
export function makePressing(changed: Partial<Pressing> = {}): Pressing {
  return {
    schemaVersion: 1,
    at: '2026-03-14T10:00:00.000Z',
    blank: { id: 'tile-ceramic-8in', name: '8 in ceramic tile', lot: 'spring 7', measured: '197x197mm' },
    art: { file: 'pear-label.png', sha256: 'a'.repeat(64) },
    printer: 'shed',
    paper: 'coated 100 g',
    recipe: {
      temperature: { value: 400, unit: 'F' },
      platenTemperature: { value: 196, unit: 'C' },
      timeS: 300,
      pressure: 'firm',
    },
    result: 4,
    defects: ['faded', 'specks'],
    photo: { file: 'pear.jpg', sha256: null },
    note: 'fresh paper',
    ...changed,
  };
}
