import { formatArea } from '../geometry/area.ts';
import { formatLength } from '../geometry/length.ts';
import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport, MendReport } from './report.ts';

/** What the mends that were asked for changed, largest change first to see; nothing where none was asked for. */
export function tellMends({ mends, plan }: ArtworkReport, page: Page): readonly string[] {
  const asked = plan.flatMap((step) => (step.step === 'mend' ? [step.mend] : []));
  if (asked.length === 0) return [];
  const lines = asked.flatMap((id) => {
    const done = mends.find(({ mend }) => mend === id);
    return hang('  [~] ', `${id}: ${done ? tellChange(done) : 'nothing to mend'}`, page);
  });
  return [paint('Mended in the print, not in your file', 'strong', page), ...lines];
}

function tellChange({ areaMm2, largestDeltaE00, largestAlpha, mended, inventedMm }: MendReport): string {
  const colour = `colours by at most ${Number(largestDeltaE00.toFixed(1))} dE00`;
  const alpha = largestAlpha > 0 ? `, alpha by at most ${Math.ceil(largestAlpha)} of 255` : '';
  const invented =
    inventedMm === undefined ? '' : `, up to ${formatLength(inventedMm)} invented beyond the art`;
  const gone = mended.length > 0 ? `. No longer found: ${mended.join(', ')}` : '';
  return `${formatArea(areaMm2)} changed, ${colour}${alpha}${invented}${gone}.`;
}
