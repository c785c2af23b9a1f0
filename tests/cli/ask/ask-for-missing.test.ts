import { describe, expect, it } from 'vitest';
import { parseArguments, type TypedOptions } from '../../../cli/arguments.ts';
import { askForMissing } from '../../../cli/ask/ask-for-missing.ts';
import type { Asker } from '../../../cli/ask/asker.ts';
import { searchBlankAnswers, searchSizeAnswers } from '../../../cli/ask/search-answers.ts';
import { listBlanks } from '../../../src/index.ts';
import { runMain } from '../run-main.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';

/** Types these, one for each question, and takes the first answer that is found. */
function typist(...typed: readonly string[]): Asker & { readonly questions: string[] } {
  const questions: string[] = [];
  return {
    questions,
    choose: async (question, search) => {
      questions.push(question);
      return search(typed[questions.length - 1]!)[0]!.value;
    },
  };
}

async function ask(line: string, asker: Asker): Promise<TypedOptions> {
  const request = await parseArguments(line.split(' '));
  if (request.wants !== 'run') throw new Error('no run');
  return askForMissing(request.options, asker);
}

describe('--ask', () => {
  it.each([
    ['a.png --ask', ['tile 8in', ''], { blank: 'tile-ceramic-8in', fit: 'inside' }],
    ['a.png --ask', ['200x150mm', 'cover'], { blank: '200x150mm', fit: 'cover' }],
    ['a.png --ask', ['mug', '70mm'], { blank: 'mug-11oz', width: '70mm' }],
    ['a.png --ask --blank tile-ceramic-8in', ['7in'], { blank: 'tile-ceramic-8in', width: '7in' }],
    ['a.png --ask --height 5cm', ['round:95mm'], { blank: 'round:95mm', height: '5cm' }],
    ['a.png --ask --blank mug-11oz --fit cover', [], { blank: 'mug-11oz', fit: 'cover' }],
  ] as const)('%s, answered %j, is %j', async (line, typed, expected) => {
    const asker = typist(...typed);
    const options = await ask(line, asker);
    expect(options).toMatchObject(expected);
    expect(options).not.toHaveProperty('ask');
    const { blank, fit, width, height } = options;
    expect(Object.values({ blank, fit, width, height }).filter(Boolean)).toHaveLength(2);
    expect(asker.questions).toHaveLength(typed.length);
  });

  it.each(['prepare', 'check'])(
    'is refused by %s where there is no terminal, and nothing is written',
    async (command) => {
      const cwd = makeFolder({ 'a.png': 'x' });
      for (const more of [[], ['--blank', 'mug-11oz', '--fit', 'cover']]) {
        const { code, stderr } = await runMain([command, 'a.png', '--ask', ...more], { cwd });
        expect([code, stderr]).toEqual([2, expect.stringContaining('[bad-option]')]);
      }
      expect(listFiles(cwd)).toEqual(['a.png']);
    },
  );

  it('asks nothing where no art was named', async () => {
    const { code, stderr } = await runMain(['prepare', '--ask'], { cwd: makeFolder() });
    expect([code, stderr]).toEqual([2, expect.stringContaining('[missing-artwork]')]);
  });
});

describe('the answers that are found', () => {
  it('are all blanks at first, then those that the words fit, each once', () => {
    expect(searchBlankAnswers('').map(({ value }) => value)).toEqual(listBlanks().map(({ id }) => id));
    const slates = searchBlankAnswers('slate').map(({ value }) => value);
    expect(slates.length).toBeGreaterThan(2);
    expect(new Set(slates).size).toBe(slates.length);
    expect(searchBlankAnswers('zzzz')).toEqual([]);
  });

  it.each([
    ['200x150mm', '200x150mm'],
    ['8x10in', '8x10in'],
    ['round:95mm', 'round:95mm'],
    ['shed/tag.json', 'shed/tag.json'],
  ])('for %s are that blank first', (typed, value) => {
    expect(searchBlankAnswers(typed)[0]?.value).toBe(value);
  });

  it.each(['200x', 'round:', '200x150'])('for %s, half typed, are no fault', (typed) => {
    expect(searchBlankAnswers(typed).map(({ value }) => value)).not.toContain(typed);
  });

  it('for a bare number are both readings of it, and for no length none', () => {
    expect(searchSizeAnswers('').map(({ value }) => value)).toEqual(['inside', 'cover']);
    expect(searchSizeAnswers('120').map(({ value }) => value)).toEqual(['120mm', '120in']);
    expect(searchSizeAnswers('whole').map(({ value }) => value)).toEqual(['cover']);
    for (const typed of ['0mm', '-3mm', 'x'.repeat(9)]) expect(searchSizeAnswers(typed)).toEqual([]);
  });
});
