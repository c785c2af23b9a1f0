import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import * as door from '../../src/index.ts';
import { renderApi } from './render-api.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const path = join(root, 'docs', 'api.md');

describe('the reference of the library', () => {
  it('is what the sources and their comments say now', () => {
    const now = renderApi(root);
    if (process.env.UPDATE === '1') writeFileSync(path, now);
    else expect(readFileSync(path, 'utf8')).toBe(now);
  });

  it('has every exported value, once', () => {
    const text = readFileSync(path, 'utf8');
    const titles = [...text.matchAll(/^### (.*)$/gm)].map(([, title]) => title!);
    expect(new Set(titles).size).toBe(titles.length);
    expect(titles).toEqual(expect.arrayContaining(Object.keys(door)));
  });

  it('says of every function what comes back', () => {
    // In so few letters nothing can be said without the function above it, which is elsewhere here.
    const texts = [...readFileSync(path, 'utf8').matchAll(/^### (.*)\n\n([^\n]*)\n/gm)];
    const isFunction = (name: string) => typeof (door as Record<string, unknown>)[name] === 'function';
    const short = texts.filter(
      ([, name, first]) => isFunction(name!) && (first!.startsWith('```') || first!.length < 25),
    );
    expect(short.map(([, name]) => name)).toEqual([]);
  });

  it('knows no path of a machine', () => {
    expect(readFileSync(path, 'utf8')).not.toContain(root);
  });
});
