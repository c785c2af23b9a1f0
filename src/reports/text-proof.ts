import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { showHidden } from './visible-text.ts';

/** Where the proof is and what it is for; why there is none only where one was asked for. */
export function tellProof(
  report: ArtworkReport,
  page: Page & { readonly proofAsked?: boolean },
): readonly string[] {
  const { proof, proofError, status } = report;
  if (proof === null && proofError === null && !page.proofAsked) return [];
  if (status === 'unreadable') return [];
  const told = proof
    ? [
        `  ${showHidden(proof.path)}`,
        ...hang(
          '  ',
          `To look at, never to print: it is not mirrored, and its colours are those of the print already${proof.marked ? '; striped is what is out of gamut' : ''}.`,
          page,
        ),
      ]
    : hang('  Not written: ', tellWhyNot(report), page, proofError ? 'stop' : 'strong');
  return [paint('Proof', 'strong', page), ...told];
}

function tellWhyNot({ proofError, placementMm }: ArtworkReport): string {
  if (proofError) return showHidden(`${proofError.message} (${proofError.code})`);
  return placementMm ? 'this run only looked.' : 'nothing of the art is visible.';
}
