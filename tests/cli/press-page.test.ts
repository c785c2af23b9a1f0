import { describe, expect, it } from 'vitest';
import { findRecipe } from '../../src/catalogue/catalogue.ts';
import { pressCard } from '../../src/catalogue/press-card.ts';
import { findBlank } from '../../src/index.ts';
import { runMain } from './run-main.ts';
import { makeFolder, readText } from './temp-folder.ts';

describe('press --page', () => {
  it.each(['tile-ceramic-8in', 'mug-11oz', 'tumbler-20oz-straight'])(
    'of %s holds every layer in order and every caution with who has the last word',
    async (id) => {
      const cwd = makeFolder();
      const { code } = await runMain(['press', id, '--page', 'card.html'], { cwd });
      expect(code).toBe(0);
      const page = readText(cwd, 'card.html');
      const card = pressCard(findBlank(id)!);
      const { layers } = findRecipe(card.recipe!.recipe.id)!;
      const numbers = [...page.matchAll(/<li value="(\d+)"/g)].map(([, value]) => Number(value));
      const upwards = layers.map((_, index) => index + 1);
      expect(numbers).toEqual(card.recipe!.layerOrder === 'bottom-to-top' ? upwards.toReversed() : upwards);
      expect(page.match(/Last word: /g)).toHaveLength(card.cautions.length);
      expect(page).not.toMatch(/<script|https?:/);
    },
  );

  it('replaces a card of its own, any other file only by force', async () => {
    const cwd = makeFolder({ 'mine.html': 'mine' });
    const words = (name: string) => ['press', 'mug-11oz', '--page', name];
    expect((await runMain(words('card.html'), { cwd })).code).toBe(0);
    expect((await runMain(words('card.html'), { cwd })).code).toBe(0);
    expect((await runMain(words('mine.html'), { cwd })).code).toBe(1);
    expect(readText(cwd, 'mine.html')).toBe('mine');
    expect((await runMain([...words('mine.html'), '--force'], { cwd })).code).toBe(0);
  });

  it('never replaces what it reads: the ledger, the record of the blank', async () => {
    const record = JSON.stringify({ ...findBlank('mug-11oz'), id: 'mug-own' });
    const files = { 'mug.json': record, 'blankcheck-ledger.jsonl': '', 'other.jsonl': '' };
    const cwd = makeFolder(files);
    for (const [page, ...more] of [
      ['mug.json'],
      ['./mug.json'],
      ['blankcheck-ledger.jsonl'],
      ['other.jsonl', '--ledger', 'other.jsonl'],
    ]) {
      const { code, stderr } = await runMain(['press', 'mug.json', '--page', page!, '--force', ...more], {
        cwd,
      });
      expect([page, code]).toEqual([page, 1]);
      expect(stderr).toContain('cannot-write');
    }
    for (const [name, text] of Object.entries(files)) expect(readText(cwd, name)).toBe(text);
  });
});
