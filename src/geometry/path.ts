/**
 * Closed outlines that are filled by the nonzero rule, in mm, x right and y down. Each contour begins with `M` and
 * ends with `Z`; `L` is a straight line, `Q` and `C` are quadratic and cubic Bézier curves (control points first).
 */
export type PathCommand =
  | readonly ['M' | 'L', number, number]
  | readonly ['Q', number, number, number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

export type Path = readonly PathCommand[];
