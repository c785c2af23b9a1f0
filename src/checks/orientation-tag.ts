import { defineCheck } from './define-check.ts';

/** What a program that ignores the tag would show, by its value. */
const MEANINGS: Readonly<Record<number, readonly ['turned' | 'mirrored', string]>> = {
  2: ['mirrored', 'mirrored left to right'],
  3: ['turned', 'turned by 180 degrees'],
  4: ['mirrored', 'mirrored top to bottom'],
  5: ['mirrored', 'mirrored and turned by 90 degrees'],
  6: ['turned', 'turned by 90 degrees'],
  7: ['mirrored', 'mirrored and turned by 90 degrees'],
  8: ['turned', 'turned by 90 degrees'],
};

export default defineCheck({
  id: 'orientation-tag',
  title: 'Orientation tag',
  reason:
    'Programs that ignore the tag show the art turned or mirrored; a mirrored one would end up reversed twice.',
  source: [
    'Orientation, tag 0x0112 (CIPA DC-008, 4.6.5.1.9 from memory; TIFF 6.0)',
    'PNG eXIf (PNG Specification, third edition, 11.3.4.5)',
  ],
  codes: { turned: ['advice'], mirrored: ['warning'] },
  needs: ({ artwork }) => ({ inputs: artwork.orientation }),
  run: (orientation) => {
    const meaning = MEANINGS[orientation];
    if (!meaning) return { findings: [] };
    const [code, words] = meaning;
    return {
      findings: [
        { code, severity: code === 'mirrored' ? 'warning' : 'advice', facts: { orientation, stored: words } },
      ],
    };
  },
  phrases: {
    turned: ({ facts }) =>
      `The file's pixels are stored ${facts.stored} and its orientation tag (${facts.orientation}) was applied. Check that the art stands upright in the print-ready file.`,
    mirrored: ({ facts }) =>
      `The file's pixels are stored ${facts.stored} and its orientation tag (${facts.orientation}) was applied. If the art was mirrored by hand for pressing, it is now reversed twice: check that lettering reads the right way in the art as shown here.`,
  },
});
