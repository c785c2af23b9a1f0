import { expect, it } from 'vitest';
import { familyOf, listBlanks } from '../../src/catalogue/catalogue.ts';
import { resolveBlank } from '../../src/job/resolve-blank.ts';
import { MEANT_TO_GO_ROUND, SEEN_SHARE } from '../../src/job/wrap-places.ts';

const round = listBlanks().filter(({ wrap }) => wrap !== undefined);

it('art that leaves bare as much as is seen at once is not meant to go round', () => {
  expect(1 - SEEN_SHARE).toBeLessThan(MEANT_TO_GO_ROUND);
});

it.each(round)('art from safe line to safe line of $id is', (blank) => {
  const { wrap, safe } = resolveBlank({ blank }, familyOf(blank));
  const { strip, onceRoundMm } = wrap!.development;
  const share = (strip.widthMm - 2 * safe.value) / Math.min(strip.widthMm, onceRoundMm);
  expect(share).toBeGreaterThan(MEANT_TO_GO_ROUND);
});
