import { defineCheck } from './define-check.ts';

export default defineCheck({
  id: 'visible-content',
  title: 'Something to print',
  reason: 'Art that is clear all over, or white on a white blank, leaves the blank bare after the press.',
  source: [
    'derived: alpha 0 puts no dye down, and no printer of this trade has white dye (common practice, no source)',
  ],
  codes: { 'nothing-visible': ['error'], 'prints-nothing': ['warning'] },
  needs: ({ extents, job }) => ({ inputs: { extents, whiteBase: job?.blank.whiteBase ?? false } }),
  run: ({ extents: { contentBoxPx, inkBoxPx, widthPx, heightPx }, whiteBase }) => {
    if (contentBoxPx === null)
      return { findings: [{ code: 'nothing-visible', severity: 'error', facts: { widthPx, heightPx } }] };
    if (whiteBase && inkBoxPx === null)
      return { findings: [{ code: 'prints-nothing', severity: 'warning', facts: { widthPx, heightPx } }] };
    return { findings: [] };
  },
  phrases: {
    'nothing-visible': ({ facts }) =>
      `All ${facts.widthPx} x ${facts.heightPx} px of the artwork are fully transparent: there is nothing to print. Export it again with its layers shown.`,
    'prints-nothing': () =>
      'Everything visible is pure white, and there is no white dye: the blank stays bare. Give the art a colour, or choose a blank with another base.',
  },
});
