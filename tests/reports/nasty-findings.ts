import type { CheckDefinition } from '../../src/checks/define-check.ts';
import type { Finding, Outcome } from '../../src/checks/finding.ts';
import type { ArtworkReport, Status } from '../../src/reports/report.ts';

/** Stand-ins for the list of checks, so that the wording of a real one moves no report's golden file. */
export const STAND_IN_CHECKS: readonly CheckDefinition[] = [
  standIn('effective-resolution', {
    'below-stop': ({ actual, expected }) =>
      `The art has only ${actual?.value} ppi at this size, and it takes at least ${expected?.min}. Print it at most 152.4 mm (6 in) wide, or get a larger file.`,
    'below-good': ({ actual }) =>
      `The art has ${actual?.value} ppi at this size: good enough from an arm's length.`,
  }),
  standIn('bleed-cover', {
    short: ({ facts }) =>
      `The art runs over the edge at the ${facts.side} but ends before the bleed does. Make it larger, or keep it off the edge.`,
  }),
  standIn('safe-area', {
    'too-close': ({ facts }) => `The art comes close to the edge at the ${facts.side}.`,
    failing: () => {
      throw new Error('a phrase of ours that fails');
    },
  }),
  standIn('pages', { 'more-than-one': ({ facts }) => `Only the first of ${facts.pages} pages was read.` }),
];

function standIn(id: string, phrases: CheckDefinition['phrases']): CheckDefinition {
  return {
    id,
    title: `Title of ${id}`,
    reason: `What goes wrong | where ${id}\nfinds something <on the blank>.`,
    source: ['common practice, no source'],
    codes: Object.fromEntries(Object.keys(phrases).map((code) => [code, ['error', 'warning'] as const])),
    needs: () => ({ skip: 'a stand-in' }),
    run: () => ({ findings: [] }),
    phrases,
  };
}

export const SHORT: Finding = {
  code: 'short',
  severity: 'error',
  actual: { value: 1.2000000000000002, unit: 'mm' },
  expected: { min: 3, unit: 'mm', from: 'blank:tile-ceramic-8in' },
  place: {
    px: { x: 0, y: 0, width: 900, height: 12 },
    mm: { x: -1.2, y: -1.2, width: 202.4, height: 2.7 },
  },
  facts: { side: 'top' },
};

const BELOW_STOP: Finding = {
  code: 'below-stop',
  severity: 'error',
  actual: { value: 128.57142857142858, unit: 'ppi' },
  expected: { min: 150, unit: 'ppi', from: 'family:ceramic-tile' },
  facts: {},
};

/** No place, no actual, no expected: only what happened. */
const BARE: Finding = { code: 'more-than-one', severity: 'warning', facts: { pages: 3 } };

const TOO_CLOSE: Finding = {
  code: 'too-close',
  severity: 'warning',
  actual: { value: 2, unit: 'mm' },
  expected: { min: 5, unit: 'mm', from: 'option:--safe' },
  facts: { side: 'left' },
};

const ADVICE: Finding = {
  code: 'below-good',
  severity: 'advice',
  actual: { value: 240, unit: 'ppi' },
  expected: { min: 300, unit: 'ppi', from: 'family:ceramic-tile' },
  facts: {},
};

const PASSED: readonly Outcome[] = STAND_IN_CHECKS.map(({ id }) => ({ check: id, status: 'passed' }));

/** A pear of a plant sale on a tile: nothing wrong with it, and its file is written. */
export const CLEAN: ArtworkReport = {
  artwork: {
    path: 'plant-sale/pear.png',
    sha256: '4f'.repeat(32),
    format: 'png',
    widthPx: 3200,
    heightPx: 2400,
    statedPpi: { x: 299.9994, y: 299.9994 },
  },
  status: 'ready',
  error: null,
  contentBoxPx: { x: 120, y: 88, width: 2700, height: 2025 },
  blank: { id: 'tile-ceramic-8in', widthMm: 200, heightMm: 200, surface: 'first' },
  placementMm: { x: 11.1, y: 33.325, width: 177.8, height: 133.35 },
  inkedMm: { x: 11.1, y: 33.325, width: 177.8, height: 133.35 },
  effectivePpi: { x: 385.7142857142857, y: 385.7142857142857 },
  outcomes: PASSED,
  mends: [],
  plan: [
    { step: 'crop', rectPx: { x: 120, y: 88, width: 2700, height: 2025 } },
    { step: 'resize', widthPx: 2100, heightPx: 1575 },
    { step: 'pad', widthPx: 2433, heightPx: 2433, x: 167, y: 429 },
    { step: 'flatten', background: { r: 255, g: 255, b: 255, alpha: 1 } },
    { step: 'mirror' },
  ],
  output: {
    path: 'plant-sale/print-ready/pear.tile-ceramic-8in.png',
    widthPx: 2433,
    heightPx: 2433,
    widthMm: 206,
    heightMm: 206,
    ppi: 300,
    mirrored: true,
  },
  proof: null,
  proofError: null,
};

const UNREADABLE: ArtworkReport = {
  artwork: {
    path: 'plant-sale/torn.png',
    sha256: null,
    format: null,
    widthPx: null,
    heightPx: null,
    statedPpi: null,
  },
  status: 'unreadable',
  error: {
    code: 'damaged',
    message: 'The PNG ends in the middle of its pixels. Download it again, or export it anew.',
  },
  contentBoxPx: null,
  blank: CLEAN.blank,
  placementMm: null,
  inkedMm: null,
  effectivePpi: null,
  outcomes: [],
  mends: [],
  plan: [],
  output: null,
  proof: null,
  proofError: null,
};

/** Outcomes in place of the passed ones of the same checks, and the verdict that they give. */
function withOutcomes(status: Status, outcomes: readonly Outcome[]): ArtworkReport {
  const others = PASSED.filter(({ check }) => outcomes.every((outcome) => outcome.check !== check));
  return { ...CLEAN, status, outcomes: [...outcomes, ...others], ...(status === 'stop' && { output: null }) };
}

function withPath(path: string): ArtworkReport {
  return { ...CLEAN, artwork: { ...CLEAN.artwork, path }, output: { ...CLEAN.output!, path: `out/${path}` } };
}

const LONG_WORD = 'Gartenbauvereinsfruehjahrspflanzenverkaufsstand'.repeat(4);

/** What every kind of report must bear. Each fulfils the schema; the names are those of the golden files. */
export const NASTY_REPORTS = {
  clean: CLEAN,
  'second-surface': {
    ...CLEAN,
    blank: { id: 'board-glass-cutting', widthMm: 285, heightMm: 200, surface: 'second' },
    plan: CLEAN.plan.filter(({ step }) => step !== 'mirror'),
    output: { ...CLEAN.output!, mirrored: false },
  },
  'every-severity': withOutcomes('stop', [
    { check: 'effective-resolution', status: 'found', findings: [ADVICE, BELOW_STOP] },
    { check: 'bleed-cover', status: 'found', findings: [SHORT, { ...SHORT, facts: { side: 'right' } }] },
    { check: 'pages', status: 'found', findings: [BARE] },
  ]),
  'stopped-but-written': {
    ...withOutcomes('stop', [{ check: 'bleed-cover', status: 'found', findings: [SHORT] }]),
    output: CLEAN.output,
  },
  'two-hundred': withOutcomes('look', [
    {
      check: 'safe-area',
      status: 'found',
      findings: Array.from({ length: 200 }, (_, index) => ({
        ...TOO_CLOSE,
        facts: { side: `mark ${index + 1}` },
      })),
    },
  ]),
  'long-words': {
    ...withOutcomes('look', [
      { check: 'safe-area', status: 'found', findings: [{ ...TOO_CLOSE, facts: { side: LONG_WORD } }] },
      { check: 'pages', status: 'skipped', reason: LONG_WORD },
    ]),
    artwork: { ...CLEAN.artwork, path: `${LONG_WORD}.png` },
  },
  'wide-characters': {
    ...withOutcomes('look', [
      {
        check: 'safe-area',
        status: 'found',
        findings: [{ ...TOO_CLOSE, facts: { side: '植物販売会の陶器タイルの左上の角'.repeat(5) } }],
      },
    ]),
    artwork: { ...CLEAN.artwork, path: `梨の絵👩‍🌾${'식물'.repeat(40)}.png` },
  },
  'right-to-left': withPath('سوق النباتات/إجاص.png'),
  'escape-sequences': withPath(
    'pear\u001b[2J\u001b]0;title\u0007\n\r\t\u009b31m\u202egnp.exe\u200b\ud800.png',
  ),
  skipped: withOutcomes('ready', [
    { check: 'bleed-cover', status: 'skipped', reason: 'the blank has no bleed on record' },
  ]),
  broken: withOutcomes('look', [
    {
      check: 'bleed-cover',
      status: 'broken',
      error: "TypeError: Cannot read properties of undefined (reading 'x')\u001b[31m",
    },
  ]),
  'no-phrase': withOutcomes('stop', [
    {
      check: 'effective-resolution',
      status: 'found',
      findings: [{ ...BELOW_STOP, code: 'unheard-of', facts: { widthMm: 152.4, vector: false } }],
    },
    { check: 'safe-area', status: 'found', findings: [{ ...TOO_CLOSE, code: 'failing' }] },
    {
      check: 'check-of-another-time',
      status: 'found',
      findings: [{ code: 'bare', severity: 'advice', facts: {} }],
    },
  ]),
  'nothing-visible': {
    ...withOutcomes('stop', [
      {
        check: 'visible-content',
        status: 'found',
        findings: [{ code: 'nothing-visible', severity: 'error', facts: {} }],
      },
      { check: 'bleed-cover', status: 'skipped', reason: 'nothing is visible, so there is nothing to place' },
    ]),
    contentBoxPx: null,
    placementMm: null,
    inkedMm: null,
    effectivePpi: null,
    plan: [],
  },
  'cut-art': {
    ...CLEAN,
    placementMm: { x: -20, y: -20, width: 240, height: 240 },
    inkedMm: { x: -20, y: -20, width: 240, height: 240 },
    effectivePpi: { x: 149.9600001, y: 300 },
    plan: [
      { step: 'crop', rectPx: { x: 0, y: 0, width: 2700, height: 2025 } },
      { step: 'turn', degrees: 90 },
      { step: 'pad', widthPx: 2433, heightPx: 2433, x: -201, y: -201 },
      {
        step: 'cut',
        edge: { kind: 'circle', box: { x: 0, y: 0, width: 200, height: 200 } },
        bleedMm: 3,
        ppi: 300,
      },
      { step: 'flatten', background: { r: 18, g: 52, b: 86, alpha: 1 } },
      { step: 'flatten', background: { r: 0, g: 0, b: 0, alpha: 0 } },
      { step: 'mirror' },
    ],
  },
  'only-looked': { ...CLEAN, output: null },
  'not-written': {
    ...CLEAN,
    output: null,
    error: {
      code: 'file-exists',
      message:
        'plant-sale/print-ready/pear.tile-ceramic-8in.png is there already. Add --force to replace it.',
    },
  },
  'with-proof': {
    ...CLEAN,
    output: null,
    proof: {
      path: 'proofs/pear.tile-ceramic-8in.proof.png',
      widthPx: 2434,
      heightPx: 2660,
      ppi: 300,
      marked: true,
    },
  },
  'proof-not-written': {
    ...CLEAN,
    proofError: {
      code: 'file-exists',
      message: 'proofs/pear.tile-ceramic-8in.proof.png is there already. Add --force to replace it.',
    },
  },
  unreadable: UNREADABLE,
} as const satisfies Readonly<Record<string, ArtworkReport>>;
