import { describe, expect, it } from 'vitest';
import type { ArtworkReport, RunReport } from '../../src/reports/report.ts';
import { toRunReportJson } from '../../src/reports/run-report-json.ts';
import { statusOf } from '../../src/reports/status.ts';
import { summarise } from '../../src/reports/summary.ts';
import { expectGolden } from '../golden.ts';
import { CLEAN, NASTY_REPORTS, STAND_IN_CHECKS } from './nasty-findings.ts';
import { findSchemaFaults } from './report-schema.ts';
import { findSteering } from './steering.ts';

const NAMES = Object.keys(NASTY_REPORTS) as (keyof typeof NASTY_REPORTS)[];

function runOf(results: readonly ArtworkReport[], passedOver = 0): RunReport {
  return {
    schemaVersion: 1,
    program: { name: 'blankcheck', version: '0.1.0' },
    summary: summarise(results, passedOver),
    results,
  };
}

const toJson = (results: readonly ArtworkReport[]) => toRunReportJson(runOf(results), STAND_IN_CHECKS);
const parse = (results: readonly ArtworkReport[]) => JSON.parse(toJson(results));

describe('run report as JSON', () => {
  it.each(NAMES)('%s fulfils the schema', (name) => {
    expect(findSchemaFaults(parse([NASTY_REPORTS[name]]))).toEqual([]);
  });

  it('of an empty run fulfils the schema', () => {
    expect(findSchemaFaults(parse([]))).toEqual([]);
  });

  it.each(['clean', 'every-severity', 'no-phrase', 'unreadable', 'escape-sequences'] as const)(
    '%s reads as it did',
    (name) => {
      expectGolden(`reports/${name}.json`, toJson([NASTY_REPORTS[name]]));
    },
  );

  it('has the fields of the contract in their order', () => {
    const document = parse([NASTY_REPORTS['every-severity'], CLEAN]);
    expect(Object.keys(document)).toEqual(['schemaVersion', 'program', 'summary', 'results']);
    expect(Object.keys(document.summary)).toEqual([
      'artworks',
      'ready',
      'look',
      'stop',
      'unreadable',
      'passedOver',
    ]);
    const [stopped, clean] = document.results;
    expect(Object.keys(stopped)).toEqual([
      'artwork',
      'status',
      'error',
      'contentBoxPx',
      'blank',
      'placementMm',
      'inkedMm',
      'effectivePpi',
      'outcomes',
      'mends',
      'plan',
      'output',
      'proof',
      'proofError',
    ]);
    expect(Object.keys(stopped.artwork)).toEqual([
      'path',
      'sha256',
      'format',
      'widthPx',
      'heightPx',
      'statedPpi',
    ]);
    expect(Object.keys(clean.output)).toEqual([
      'path',
      'widthPx',
      'heightPx',
      'widthMm',
      'heightMm',
      'ppi',
      'mirrored',
    ]);
    const finding = stopped.outcomes[1].findings[0];
    expect(Object.keys(finding)).toEqual([
      'code',
      'severity',
      'message',
      'actual',
      'expected',
      'place',
      'facts',
      'page',
    ]);
  });

  it('writes the same bytes whatever order an object was built in, and nothing that is not in the contract', () => {
    const { output, outcomes, status, ...rest } = CLEAN;
    const { mirrored, path, ...sizes } = output!;
    const shuffled = {
      pixels: [1, 2, 3],
      output: { mirrored, ...sizes, note: 'x', path },
      status,
      outcomes,
      ...rest,
    };
    expect(toJson([shuffled])).toBe(toJson([CLEAN]));
  });

  it('leaves out actual, expected and place where they mean nothing', () => {
    const [finding] = parse([NASTY_REPORTS['nothing-visible']]).results[0].outcomes[0].findings;
    expect(Object.keys(finding)).toEqual(['code', 'severity', 'message', 'facts', 'page']);
  });

  it('tells the facts of a pass', () => {
    const outcomes = [{ check: 'pages', status: 'passed', facts: { vector: true } }] as const;
    expect(parse([{ ...CLEAN, outcomes }]).results[0].outcomes).toEqual(outcomes);
  });

  it('rounds away the noise of doubles and keeps the measure', () => {
    const [result] = parse([NASTY_REPORTS['every-severity']]).results;
    expect(result.effectivePpi).toEqual({ x: 385.714286, y: 385.714286 });
    expect(result.outcomes[1].findings[0].actual).toEqual({ value: 1.2, unit: 'mm' });
  });

  it('ends with one newline, and holds no raw character that a terminal obeys', () => {
    const text = toJson(NAMES.map((name) => NASTY_REPORTS[name]));
    expect(text).toMatch(/[^\n]\n$/);
    expect(findSteering(text)).toEqual([]);
  });

  it('gives strings back as they were, escape sequences and all', () => {
    const { path } = NASTY_REPORTS['escape-sequences'].artwork;
    expect(parse([NASTY_REPORTS['escape-sequences']]).results[0].artwork.path).toBe(path);
  });
});

describe('report schema', () => {
  it('is strict about every object: one stranger in any of them is a fault', () => {
    const document = parse([
      NASTY_REPORTS['every-severity'],
      NASTY_REPORTS['cut-art'],
      NASTY_REPORTS['not-written'],
    ]);
    const objects = objectsOf(document).filter(({ path }) => !path.endsWith('facts'));
    expect(objects.length).toBeGreaterThan(60);
    for (const { path, value } of objects) {
      value.stranger = 1;
      expect(findSchemaFaults(document), path).not.toEqual([]);
      delete value.stranger;
    }
    expect(findSchemaFaults(document)).toEqual([]);
  });

  it('needs every field that is not optional', () => {
    const optional = /\.(actual|expected|place|page|min|max)$|facts\./;
    const document = parse([
      NASTY_REPORTS['every-severity'],
      NASTY_REPORTS['cut-art'],
      NASTY_REPORTS['not-written'],
    ]);
    for (const { path, value } of objectsOf(document))
      for (const key of Object.keys(value)) {
        if (optional.test(`${path}.${key}`)) continue;
        const kept = value[key];
        delete value[key];
        expect(findSchemaFaults(document), `${path}.${key}`).not.toEqual([]);
        value[key] = kept;
      }
    expect(findSchemaFaults(document)).toEqual([]);
  });

  it.each<[fault: string, breakIt: (result: Broken) => void]>([
    ['an unheard-of status', (result) => Object.assign(result, { status: 'fine' })],
    ['ready in spite of a warning', (result) => found(result, 'warning')],
    ['ready in spite of an error', (result) => found(result, 'error')],
    ['look in spite of an error', (result) => found(Object.assign(result, { status: 'look' }), 'error')],
    ['stop without an error', (result) => found(Object.assign(result, { status: 'stop' }), 'warning')],
    [
      'ready in spite of a broken check',
      (result) => Object.assign(result, { outcomes: [{ check: 'a', status: 'broken', error: 'b' }] }),
    ],
    [
      'a check that found nothing',
      (result) => Object.assign(result, { outcomes: [{ check: 'a', status: 'found', findings: [] }] }),
    ],
    [
      'skipped without a reason',
      (result) => Object.assign(result, { outcomes: [{ check: 'a', status: 'skipped' }] }),
    ],
    ['no outcome at all', (result) => Object.assign(result, { outcomes: [] })],
    [
      'unreadable without an error',
      (result) => Object.assign(result, { status: 'unreadable', outcomes: [], plan: [], output: null }),
    ],
    [
      'an error beside a written file',
      (result) => Object.assign(result, { error: { code: 'cannot-write', message: 'm' } }),
    ],
    ['a place for nothing visible', (result) => Object.assign(result, { contentBoxPx: null })],
    ['something visible without a place', (result) => Object.assign(result, { placementMm: null })],
    ['half a pixel', (result) => Object.assign(result.output, { widthPx: 0.5 })],
    ['a hash of another length', (result) => Object.assign(result.artwork, { sha256: 'ab' })],
    ['a step nobody carries out', (result) => Object.assign(result, { plan: [{ step: 'sharpen' }] })],
    [
      'a mend that does not say what it changed',
      (result) => Object.assign(result, { mends: [{ mend: 'drop-strays' }] }),
    ],
    ['a number that is none', (result) => Object.assign(result.effectivePpi, { x: null })],
  ])('rejects %s', (_, breakIt) => {
    const document = parse([CLEAN]);
    expect(findSchemaFaults(document)).toEqual([]);
    breakIt(document.results[0]);
    expect(findSchemaFaults(document)).not.toEqual([]);
  });

  it.each(NAMES)('agrees with the verdict on %s', (name) => {
    const { status, outcomes }: ArtworkReport = NASTY_REPORTS[name];
    if (status !== 'unreadable') expect(statusOf(outcomes)).toBe(status);
  });
});

type Broken = Record<'output' | 'artwork' | 'effectivePpi' | 'outcomes', object>;

function found(result: Broken, severity: string): void {
  Object.assign(result, {
    outcomes: [{ check: 'a', status: 'found', findings: [{ code: 'b', severity, message: 'm', facts: {} }] }],
  });
}

function objectsOf(value: unknown, path = '$'): { path: string; value: Record<string, unknown> }[] {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.entries(value).flatMap(([key, child]) => objectsOf(child, `${path}.${key}`));
  return Array.isArray(value) ? below : [{ path, value: value as Record<string, unknown> }, ...below];
}
