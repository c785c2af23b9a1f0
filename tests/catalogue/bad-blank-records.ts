import type { BlankRecord } from '../../src/catalogue/records.ts';

/** A flat blank of the plant sale that the catalogue does not have. */
export const marker = {
  id: 'plant-marker',
  name: 'Plant marker',
  surface: 'first',
  outline: { shape: 'rounded-rect', widthMm: 40, heightMm: 120, cornerRadiusMm: 4 },
} as const satisfies BlankRecord;
/** A round one. */
export const cup = {
  id: 'stall-cup',
  name: 'Stall cup',
  surface: 'first',
  wrap: {
    topDiameterMm: 80,
    bottomDiameterMm: 80,
    bodyHeightMm: 90,
    printHeightMm: 80,
    wayRound: 'part',
    handleGapMm: 40,
    clearTopMm: 5,
    clearBaseMm: 5,
  },
} as const satisfies BlankRecord;
const withOutline = (outline: object) => ({ ...marker, outline: { ...marker.outline, ...outline } });
const withWrap = (wrap: object) => ({ ...cup, wrap: { ...cup.wrap, ...wrap } });
const shaped = (outline: object) => ({ ...marker, outline });
const triangle = [
  [0, 0],
  [40, 0],
  [0, 120],
];

/** What is wrong, the record, and what the message must contain: the field, what was expected, what was found. */
export const BAD_RECORDS: readonly (readonly [string, unknown, readonly string[]])[] = [
  ['no object', 7, ['markers.json', '7']],
  ['null', null, ['null']],
  ['a list', [marker], ['one blank', 'list']],
  ['a file of blanks', { blanks: [marker] }, ['one blank', 'list']],
  ['nothing in it', {}, ['id: ', 'name: ', 'surface: ', 'nothing']],
  ['a text for a number', withOutline({ widthMm: '40mm' }), ['outline.widthMm', 'millimetres', '"40mm"']],
  ['no width', shaped({ shape: 'rect', heightMm: 3 }), ['outline.widthMm', 'nothing']],
  ['a negative size', withOutline({ heightMm: -1 }), ['outline.heightMm', 'above 0', '-1']],
  ['a size of zero', withOutline({ widthMm: 0 }), ['outline.widthMm', 'above 0', 'found 0']],
  ['more than ten metres', withOutline({ widthMm: 10_001 }), ['outline.widthMm', '10000', '10001']],
  ['an infinite number', withOutline({ widthMm: Number.POSITIVE_INFINITY }), ['outline.widthMm', 'Infinity']],
  ['an unknown shape', withOutline({ shape: 'heart' }), ['outline.shape', '"polygon"', '"heart"']],
  ['an unknown surface', { ...marker, surface: 'third' }, ['surface', '"first", "second"', '"third"']],
  ['an empty id', { ...marker, id: '' }, ['id: ', 'at least 1']],
  ['an id over two lines', { ...marker, id: 'a\nb' }, ['id: ', '"a\\nb"']],
  ['a mistyped field', { ...marker, bleedMM: 3 }, ['bleedMM', 'bleedMm']],
  ['a mistyped field below', withOutline({ widhtMm: 3 }), ['outline.widhtMm', 'widthMm']],
  ['a strange colour', { ...marker, baseColour: 'oak' }, ['baseColour', '#rrggbb', '"oak"']],
  ['an unknown family', { ...marker, family: 'stone-slat' }, ['family', 'stone-slate', '"stone-slat"']],
  ['an unknown recipe', { ...marker, recipe: 'hardbord' }, ['recipe', 'hardboard', '"hardbord"']],
  ['neither body', { ...marker, outline: undefined }, ['outline']],
  ['no body', { id: 'a', name: 'b', surface: 'first' }, ['outline', 'wrap', 'neither']],
  ['both bodies', { ...cup, outline: marker.outline }, ['wrap', 'both']],
  ['a corner too round', withOutline({ cornerRadiusMm: 21 }), ['outline.cornerRadiusMm', '20', '21']],
  [
    'no corner radius',
    shaped({ shape: 'rounded-rect', widthMm: 4, heightMm: 4 }),
    ['outline.cornerRadiusMm'],
  ],
  [
    'a radius on a circle',
    shaped({ shape: 'circle', widthMm: 4, heightMm: 4, cornerRadiusMm: 1 }),
    ['circle'],
  ],
  [
    'a circle with two diameters',
    shaped({ shape: 'circle', widthMm: 4, heightMm: 5 }),
    ['outline.heightMm', '4'],
  ],
  [
    'a polygon without points',
    shaped({ shape: 'polygon', widthMm: 40, heightMm: 120 }),
    ['pointsMm', '3 distinct'],
  ],
  [
    'two points',
    shaped({
      shape: 'polygon',
      widthMm: 40,
      heightMm: 120,
      pointsMm: [
        [0, 0],
        [40, 120],
      ],
    }),
    ['pointsMm'],
  ],
  [
    'points on a rectangle',
    shaped({ shape: 'rect', widthMm: 40, heightMm: 120, pointsMm: triangle }),
    ['pointsMm'],
  ],
  [
    'a point of three',
    shaped({ shape: 'polygon', widthMm: 40, heightMm: 120, pointsMm: [[0, 0, 0]] }),
    ['pointsMm[0]'],
  ],
  [
    'a hole without a shape',
    { ...marker, holes: [{ use: 'hang', xMm: 1, yMm: 1 }] },
    ['holes[0].shape', '"slot"'],
  ],
  [
    'a hole elsewhere',
    { ...marker, holes: [{ use: 'hang', shape: 'circle', xMm: 90, yMm: 5, diameterMm: 3 }] },
    ['holes[0].xMm', '40', '90'],
  ],
  [
    'a printable area too large',
    { ...marker, printable: { shape: 'rect', widthMm: 41, heightMm: 60 } },
    ['printable.widthMm', '40'],
  ],
  ['a band higher than the body', withWrap({ printHeightMm: 81 }), ['wrap.printHeightMm', '80', '81']],
  ['an overlap on part of the way', withWrap({ overlapMm: 3 }), ['wrap.overlapMm']],
  ['a gap on the whole way', withWrap({ wayRound: 'whole' }), ['wrap.handleGapMm']],
  ['a gap as wide as the way round', withWrap({ handleGapMm: 252 }), ['wrap.handleGapMm', '251.3']],
  ['part of the way, but which', withWrap({ handleGapMm: undefined }), ['wrap.handleGapMm']],
  [
    'holes in a round body',
    { ...cup, holes: [{ use: 'x', shape: 'circle', xMm: 1, yMm: 1, diameterMm: 1 }] },
    ['holes'],
  ],
];
