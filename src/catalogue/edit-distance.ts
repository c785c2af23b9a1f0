/**
 * Fewest single-character insertions, deletions, replacements and swaps of neighbours that turn one text into the
 * other, no part edited twice (optimal string alignment; F. J. Damerau, "A technique for computer detection and
 * correction of spelling errors", CACM 7(3), 1964). Counts UTF-16 units.
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, beforeLast[j - 2]! + 1);
      }
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
