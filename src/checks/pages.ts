import { defineCheck } from './define-check.ts';

export default defineCheck({
  id: 'pages',
  title: 'Pages or frames in the file',
  reason: 'Only the first page is printed; the art that was meant may be on another.',
  source: ['TIFF 6.0 (several image file directories); GIF89a, APNG and WebP animation'],
  codes: { 'more-than-one': ['warning'] },
  needs: ({ artwork }) => ({ inputs: artwork.pages }),
  run: (pages) =>
    pages <= 1
      ? { findings: [] }
      : { findings: [{ code: 'more-than-one', severity: 'warning', facts: { pages } }] },
  phrases: {
    'more-than-one': ({ facts }) =>
      `The file holds ${facts.pages} pages or frames and only the first was read. If another one is meant, save it as a file of its own.`,
  },
});
