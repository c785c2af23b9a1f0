import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A fresh folder with these files (a name that ends with `/` is a folder), removed when the test ends. */
export function makeFolder(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'blankcheck-test-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  putFiles(folder, files);
  return folder;
}

export function putFiles(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(name.endsWith('/') ? path : dirname(path), { recursive: true });
    if (!name.endsWith('/')) writeFileSync(path, content);
  }
}

/** Every file below, with `/` between the parts, sorted. */
export function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => !lstatSync(join(folder, name)).isDirectory())
    .map((name) => name.replaceAll('\\', '/'))
    .sort();
}

export function readText(folder: string, name: string): string {
  return readFileSync(join(folder, name), 'utf8');
}
