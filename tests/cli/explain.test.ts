import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/index.ts';
import { runMain } from './run-main.ts';

const folder = new URL('../../docs/findings/', import.meta.url);
const pageOf = (id: string) => readFileSync(new URL(`${id}.md`, folder), 'utf8');
const index = readFileSync(new URL('../findings.md', folder), 'utf8');

describe('the pages on findings', () => {
  it('are one for each check, and no more', () => {
    expect(readdirSync(folder).sort()).toEqual(CHECKS.map(({ id }) => `${id}.md`).sort());
    for (const { id } of CHECKS) expect(index).toContain(`(findings/${id}.md)`);
  });

  it.each(CHECKS.map((check) => [check.id, check] as const))(
    '%s: title, why, and each code with its gravity and what to do',
    (id, { title, reason, codes }) => {
      const page = pageOf(id);
      expect(page.startsWith(`# ${title}\n\n\`${id}\`\n\n${reason}\n`)).toBe(true);
      const sections = page.split('\n## ').slice(1);
      expect(sections.map((text) => /^`(.*)`/.exec(text)![1])).toEqual(Object.keys(codes));
      for (const [i, text] of sections.entries()) {
        const severities = Object.values(codes)[i]!;
        expect(text.toLowerCase()).toContain(`*${severities.join(' or ')}.*`);
        expect(text).toMatch(/\nWhat to do: \S/);
      }
    },
  );
});

describe('blankcheck explain', () => {
  it.each([
    ['bleed-cover', ['bleed-cover']],
    ['bleed-cover/short', ['bleed-cover']],
    ['SHORT', ['bleed-cover']],
    ['prints-nothing bleed-cover', ['visible-content', 'bleed-cover']],
  ])('%s', async (words, ids) => {
    const { code, stdout } = await runMain(['explain', ...words.split(' ')], { cwd: '.' });
    expect(code).toBe(0);
    const shown = CHECKS.filter(({ title }) => stdout.includes(`${title}\n`)).map(({ id }) => id);
    expect(shown).toEqual(ids);
    expect(stdout).not.toMatch(/[`#*]/);
  });

  it('lists them all without a word', async () => {
    const { code, stdout } = await runMain(['explain'], { cwd: '.' });
    expect(code).toBe(0);
    expect(
      stdout
        .trim()
        .split('\n')
        .map((line) => line.split(':')[0]),
    ).toEqual(CHECKS.map(({ id }) => id));
  });

  it.each(['bleed-covr', 'bleed-cover/shrt', 'gamut/short', '../package'])('refuses "%s"', async (word) => {
    const { code, stdout, stderr } = await runMain(['explain', word], { cwd: '.' });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain('unknown-finding');
  });
});
