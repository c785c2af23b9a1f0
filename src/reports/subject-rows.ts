import { formatLength, formatSize } from '../geometry/length.ts';
import type { ArtworkReport, DevelopmentReport } from './report.ts';

/** What was judged, as rows of a label and a text: artwork, blank, print size, paper, resolution. */
export function subjectRows({
  artwork,
  blank,
  placementMm,
  copiesMm,
  development,
  effectivePpi,
}: ArtworkReport): readonly (readonly [label: string, text: string])[] {
  const format = artwork.format?.toUpperCase() ?? 'unknown format';
  const size = artwork.widthPx === null ? '' : `, ${artwork.widthPx} x ${artwork.heightPx} px`;
  const print = placementMm
    ? `${formatSize(placementMm.width, placementMm.height)}${copiesMm ? ', repeated' : ''}`
    : 'none: nothing is visible';
  return [
    ['Artwork', `${format}${size}`],
    ...(artwork.insteadOf ? [['Instead of', tellOthers(artwork)] as const] : []),
    ['Blank', tellBlank(blank)],
    ['Print size', print],
    ...(development ? [['Flat paper', tellPaper(development)] as const] : []),
    ...(effectivePpi ? [['Resolution', tellResolution(artwork.format, effectivePpi)] as const] : []),
  ];
}

/** The formats that an artwork was taken instead of, in words. */
export function tellOthers({ insteadOf = [], unreadableBeside = [] }: ArtworkReport['artwork']): string {
  return insteadOf
    .map((name) => (unreadableBeside.includes(name) ? `${name} (cannot be read)` : name))
    .join(', ');
}

function tellPaper({ kind, widthMm, heightMm, angleDeg, ...paper }: DevelopmentReport): string {
  const size = formatSize(widthMm, heightMm);
  if (kind === 'rectangle') return `a rectangle of ${size}`;
  const radii = [paper.outerRadiusMm, paper.innerRadiusMm].map((mm) => formatLength(mm ?? 0)).join(' and ');
  return `an arc of ${angleDeg.toFixed(1)} degrees with radii of ${radii}, in a box of ${size}`;
}

function tellBlank({ id, widthMm, heightMm, printable }: ArtworkReport['blank']): string {
  const part = printable ? `, printable ${formatSize(printable.widthMm, printable.heightMm)}` : '';
  return `${id}, ${formatSize(widthMm, heightMm)}${part}`;
}

type Ppi = NonNullable<ArtworkReport['effectivePpi']>;

function tellResolution(format: ArtworkReport['artwork']['format'], ppi: Ppi): string {
  return format === 'svg' ? 'vector: drawn as fine as it is printed' : `${tellPpi(ppi)} at that size`;
}

/** Rounded down, so that 149.96 never reads as the 150 it falls short of. */
function tellPpi({ x, y }: Ppi): string {
  const [across, down] = [x, y].map((ppi) => Math.floor(ppi * 10 + 1e-6) / 10);
  return across === down ? `${across} ppi` : `${across} x ${down} ppi`;
}
