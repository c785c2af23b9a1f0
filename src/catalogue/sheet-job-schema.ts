import * as z from 'zod';

const line = z
  .string()
  .min(1)
  .max(2000)
  .regex(/^\P{Cc}*$/u);
const length = (what: string) => z.exactOptional(line).describe(`${what}, with its unit, such as 30mm`);

/** One kind of piece: what the options of the same names say, for this piece alone. */
export const jobPieceSchema = z.strictObject({
  art: line.describe('file of the artwork, from the folder of this file'),
  secondSide: z
    .exactOptional(line)
    .describe('art of the other side of the same blank: it lies beside the first, on the blank turned over'),
  blank: z.exactOptional(line).describe('as --blank takes it; that of the command line when left out'),
  copies: z.exactOptional(z.int().min(1).max(10_000)).describe('1 when left out'),
  pair: z
    .exactOptional(z.boolean())
    .describe('with each copy a second piece, its mirror image, kept beside it on the same page'),
  mayTurn: z.exactOptional(z.boolean()).describe('may lie on the page turned by 90 degrees'),
  measured: z.exactOptional(line).describe('real size of the blank in hand, such as 197x197mm'),
  width: length('printed width of the visible art'),
  height: length('printed height of it'),
  fit: z.exactOptional(z.enum(['inside', 'cover'])),
  turn: z.exactOptional(z.literal([0, 90, 180, 270])).describe('degrees clockwise before the art is placed'),
  offset: z.exactOptional(line).describe('right and down from the middle, such as 2mm,-1mm'),
  bleed: length("in place of the blank's own bleed"),
  safe: length("in place of the blank's own safe distance"),
  surface: z.exactOptional(z.enum(['first', 'second'])),
});

/** What goes on sheets together. */
export const sheetJobSchema = z.strictObject({
  $schema: z.exactOptional(z.string()),
  sheet: z.exactOptional(line).describe('as --sheet takes it, which wins'),
  gutter: length('from picture to picture'),
  platen: z.exactOptional(line).describe('what the press takes at once, such as 380x380mm'),
  pieces: z.array(jobPieceSchema).min(1).max(1000),
});

export type JobPiece = z.infer<typeof jobPieceSchema>;
export type SheetJob = z.infer<typeof sheetJobSchema>;
