import alphaHaze from './alpha-haze.ts';
import alreadyPrepared from './already-prepared.ts';
import banding from './banding.ts';
import bleedCover from './bleed-cover.ts';
import compressionBlocks from './compression-blocks.ts';
import cutOffEdge from './cut-off-edge.ts';
import darkCoverage from './dark-coverage.ts';
import type { CheckDefinition } from './define-check.ts';
import edgeDetail from './edge-detail.ts';
import edgeFringe from './edge-fringe.ts';
import effectiveResolution from './effective-resolution.ts';
import embeddedProfile from './embedded-profile.ts';
import faceInView from './face-in-view.ts';
import gamut from './gamut.ts';
import handleClear from './handle-clear.ts';
import hollowAlpha from './hollow-alpha.ts';
import keepOut from './keep-out.ts';
import lipBand from './lip-band.ts';
import markedPreview from './marked-preview.ts';
import measuredSize from './measured-size.ts';
import nearWhiteBox from './near-white-box.ts';
import orientationTag from './orientation-tag.ts';
import pages from './pages.ts';
import printSize from './print-size.ts';
import safeArea from './safe-area.ts';
import seamMatch from './seam-match.ts';
import sheetFit from './sheet-fit.ts';
import statedDensity from './stated-density.ts';
import strayPixels from './stray-pixels.ts';
import taper from './taper.ts';
import thinBorder from './thin-border.ts';
import thinDetail from './thin-detail.ts';
import transparentMargin from './transparent-margin.ts';
import trueDetail from './true-detail.ts';
import vectorContent from './vector-content.ts';
import visibleContent from './visible-content.ts';
import wrapLength from './wrap-length.ts';

/** Every check, in the order of every report. */
export const CHECKS: readonly CheckDefinition[] = [
  visibleContent,
  alreadyPrepared,
  effectiveResolution,
  trueDetail,
  compressionBlocks,
  banding,
  thinDetail,
  printSize,
  bleedCover,
  safeArea,
  thinBorder,
  keepOut,
  edgeDetail,
  taper,
  wrapLength,
  seamMatch,
  handleClear,
  faceInView,
  lipBand,
  transparentMargin,
  strayPixels,
  alphaHaze,
  nearWhiteBox,
  hollowAlpha,
  edgeFringe,
  cutOffEdge,
  statedDensity,
  orientationTag,
  embeddedProfile,
  pages,
  gamut,
  darkCoverage,
  vectorContent,
  markedPreview,
  measuredSize,
  sheetFit,
];
