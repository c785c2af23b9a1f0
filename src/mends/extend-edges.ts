import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';
import { inventBleed } from './invent-bleed.ts';

export default {
  id: 'extend-edges',
  title: 'Make a bleed where art reaches the edge and ends too soon',
  reason:
    'Goes on beyond the edge, as far as the bleed line, with what the art has at its rim: mirrored, as it is, or blurred along the rim (--extend). Only outside the edge of the blank, so that the invented part never comes near the safe area; the art keeps its size and its place.',
  source: ['bleed of the blank (seeds)', 'mirroring at the rim by default (own choice)'],
  answers: ['bleed-cover/short'],
  gentle: false,
  apply(raster, { job, extend }: MendContext): MendedRaster {
    const placed = job();
    return placed === null ? { raster } : inventBleed(raster, placed, extend);
  },
} satisfies MendDefinition;
