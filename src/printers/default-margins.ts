import type { PrinterMargins } from '../catalogue/printer-record.ts';
import { MARGINS } from '../catalogue/seed-data.ts';

/** The margins to keep when the printer is unknown (seeds/papers.json). */
export function defaultMarginsMm(): PrinterMargins {
  const { sidesMm, leadMm, trailMm } = MARGINS.find((margin) => margin.default)!;
  return { left: sidesMm.max, right: sidesMm.max, lead: leadMm.max, trail: trailMm.max };
}
