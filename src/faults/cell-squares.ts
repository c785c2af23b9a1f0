/** The cells within `by` of one, each way, itself too, as far as there are any; rows from the top. */
export function squareAbout(cell: number, width: number, height: number, by: number): number[] {
  const [x, y] = [cell % width, Math.floor(cell / width)];
  const cells: number[] = [];
  for (let row = Math.max(0, y - by); row <= Math.min(height - 1, y + by); row += 1)
    for (let column = Math.max(0, x - by); column <= Math.min(width - 1, x + by); column += 1)
      cells.push(row * width + column);
  return cells;
}

/** 1 for each cell that has a marked one within `by` of it. */
export function growMask(mask: Uint8Array, width: number, height: number, by: number): Uint8Array {
  const grown = new Uint8Array(mask.length);
  mask.forEach((is, cell) => {
    if (is === 1) for (const near of squareAbout(cell, width, height, by)) grown[near] = 1;
  });
  return grown;
}
