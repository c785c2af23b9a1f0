import { defineCheck } from './define-check.ts';

export default defineCheck({
  id: 'already-prepared',
  title: 'Artwork that was prepared before',
  reason:
    'A print-ready file is mirrored already: preparing it again mirrors it twice, and the print reads backwards. A proof shows printed colours and a caption: it is no art.',
  source: [
    "derived: two reversals cancel out; the record is the program's own, written as XMP (ISO 16684-1)",
  ],
  codes: { 'prepared-before': ['error'] },
  needs: ({ artwork }) => ({ inputs: artwork.printRecord }),
  run: (record) =>
    record === null
      ? { findings: [] }
      : {
          findings: [
            {
              code: 'prepared-before',
              severity: 'error',
              facts: {
                kind: record.kind ?? 'print-ready',
                blank: record.blankId,
                mirrored: record.mirrored,
                sourceSha256: record.sourceSha256,
                version: record.version,
              },
            },
          ],
        },
  phrases: {
    'prepared-before': ({ facts }) =>
      facts.kind === 'proof'
        ? `This file is a proof, made for ${facts.blank} to be looked at: it shows colours as they will be printed, and printing it would change them again. Start from the original art.`
        : `This file is a print-ready file already, made for ${facts.blank}${facts.mirrored ? ' and mirrored' : ''}: ${facts.mirrored ? 'a second mirroring would make it read backwards' : 'preparing it again would pad and scale it twice'}. Print it as it is, or start from the original art.`,
  },
});
