import type { VectorFacts } from '../formats/artwork.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';

export default defineCheck<VectorFacts | null>({
  id: 'vector-content',
  title: 'What a drawing depends on',
  reason:
    'Live lettering is drawn with whatever font this machine has, or as empty boxes; files that a drawing points to are never loaded.',
  source: ['SVG 2 (text; linking), secure static processing mode 2.7 from memory'],
  codes: { 'live-text': ['warning'], 'outside-reference': ['warning'] },
  needs: ({ artwork }) => ({ inputs: artwork.vector }),
  run: (vector) => {
    if (vector === null) return { findings: [], facts: { drawing: false } };
    const { textElements, outsideReferences } = vector;
    const findings: Finding[] = [];
    if (textElements > 0) findings.push({ code: 'live-text', severity: 'warning', facts: { textElements } });
    if (outsideReferences.length > 0) {
      findings.push({
        code: 'outside-reference',
        severity: 'warning',
        facts: { references: outsideReferences.length, first: outsideReferences[0]!.slice(0, 80) },
      });
    }
    return { findings };
  },
  phrases: {
    'live-text': ({ facts }) =>
      `The drawing has ${facts.textElements === 1 ? '1 piece' : `${facts.textElements} pieces`} of live lettering, drawn with the fonts of this machine. Turn lettering into outlines in the program the drawing came from, or check it letter by letter.`,
    'outside-reference': ({ facts }) =>
      `The drawing points to ${facts.references === 1 ? `something outside itself, which was not loaded (${facts.first}). Embed it` : `${facts.references} things outside itself, which were not loaded (first: ${facts.first}). Embed them`}, or export a PNG.`,
  },
});
