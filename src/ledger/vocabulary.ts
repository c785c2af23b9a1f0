/**
 * What may be wrong with a pressed piece, each word with its meaning: few, so that results can be searched and counted.
 * Common practice, no source; the note of a record takes whatever they do not say.
 */
export const DEFECTS = {
  faded: 'pale or patchy: too little heat, time or contact',
  ghosting: 'a second faint image: the paper moved, or dye came from used paper',
  blotches: 'cloudy places: damp paper or blank',
  halo: 'a faint rim, box or veil round the art',
  specks: 'marks that are not of the art: lint, dust, dots of the printer',
  banding: 'stripes along the path of the head',
  scorched: 'yellowed or burnt: too hot or too long',
  colour: 'other colours than expected',
  'wrong-size': 'printed or pressed at another size',
  misplaced: 'shifted or turned on the blank, or a bare edge',
  mirrored: 'the wrong way round',
  lines: 'edges of paper, pad or platen show',
  broken: 'cracked, chipped, warped or deformed',
} as const;

export type Defect = keyof typeof DEFECTS;

/** Words for how firmly the press closes; presses of hobby makers are not calibrated (common practice, no source). */
export const PRESSURES = ['light', 'light-medium', 'medium', 'medium-firm', 'firm', 'tension'] as const;

export type Pressure = (typeof PRESSURES)[number];
