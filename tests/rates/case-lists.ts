import { BANDING_CASES } from './banding-cases.ts';
import { COMPRESSION_CASES } from './compression-cases.ts';
import { CUT_OFF_EDGE_CASES } from './cut-off-edge-cases.ts';
import {
  ALPHA_HAZE_CASES,
  HOLLOW_ALPHA_CASES,
  NEAR_WHITE_BOX_CASES,
  STRAY_PIXELS_CASES,
} from './cut-out-cases.ts';
import { THIN_BORDER_CASES, THIN_DETAIL_CASES } from './detail-cases.ts';
import { EDGE_DETAIL_CASES } from './edge-detail-cases.ts';
import { EDGE_FRINGE_CASES } from './edge-fringe-cases.ts';
import type { FaultCase } from './fault-case.ts';
import { MARKED_PREVIEW_CASES } from './marked-preview-cases.ts';
import { TRUE_DETAIL_CASES } from './true-detail-cases.ts';

/** The made pictures of each check; a check gets its rates by standing here. */
export const CASE_LISTS: Readonly<Record<string, readonly FaultCase[]>> = {
  banding: BANDING_CASES,
  'compression-blocks': COMPRESSION_CASES,
  'true-detail': TRUE_DETAIL_CASES,
  'thin-border': THIN_BORDER_CASES,
  'edge-detail': EDGE_DETAIL_CASES,
  'thin-detail': THIN_DETAIL_CASES,
  'alpha-haze': ALPHA_HAZE_CASES,
  'hollow-alpha': HOLLOW_ALPHA_CASES,
  'stray-pixels': STRAY_PIXELS_CASES,
  'near-white-box': NEAR_WHITE_BOX_CASES,
  'edge-fringe': EDGE_FRINGE_CASES,
  'cut-off-edge': CUT_OFF_EDGE_CASES,
  'marked-preview': MARKED_PREVIEW_CASES,
};
