import { describe, expect, it } from 'vitest';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, readText } from './temp-folder.ts';

const FILES = {
  'beds/basil.png': makeArt(),
  'beds/mint.png': makeArt([200, 30, 30]),
  'beds/torn.png': makeArt().subarray(0, 60),
};
const WORDS = ['check', 'beds', '--blank', '60x60mm', '--width', '2mm', '--report', 'out/report.html'];

describe('--report', () => {
  it('writes one page of all, the unreadable ones too, and nothing beside it', async () => {
    const cwd = makeFolder(FILES);
    const { code, stdout } = await runMain(WORDS, { cwd });
    expect([code, stdout]).toEqual([1, '']);
    expect(listFiles(cwd).filter((name) => !name.startsWith('beds/'))).toEqual(['out/report.html']);
    const page = readText(cwd, 'out/report.html');
    expect(page.match(/<article /g)).toHaveLength(3);
    expect(page).toContain('beds/torn.png');
  });

  it('comes to the same bytes twice, and replaces a page of its own', async () => {
    const cwd = makeFolder(FILES);
    await runMain(WORDS, { cwd });
    const first = readText(cwd, 'out/report.html');
    const again = await runMain(WORDS, { cwd });
    expect([again.code, readText(cwd, 'out/report.html')]).toEqual([1, first]);
  });

  it('leaves any other file as it is, unless it is forced', async () => {
    const cwd = makeFolder({ ...FILES, 'out/report.html': '<!doctype html>\nmine' });
    const refused = await runMain([...WORDS, '--json'], { cwd });
    expect(refused.code).toBe(1);
    expect(refused.stderr).toContain('[file-exists]');
    expect(JSON.parse(refused.stdout).summary.artworks).toBe(3);
    expect(readText(cwd, 'out/report.html')).toBe('<!doctype html>\nmine');
    await runMain([...WORDS, '--force'], { cwd });
    expect(readText(cwd, 'out/report.html')).toContain('<article ');
  });

  it('never replaces an artwork of the run, though forced', async () => {
    const cwd = makeFolder({ 'basil.png': makeArt() });
    const words = [
      'check',
      'basil.png',
      '--blank',
      '60x60mm',
      '--width',
      '2mm',
      '--report',
      'basil.png',
      '--force',
    ];
    const { code } = await runMain(words, { cwd });
    expect([code, readText(cwd, 'basil.png')]).toEqual([1, Buffer.from(makeArt()).toString()]);
  });

  it('says where its folder cannot be written', async () => {
    const cwd = makeFolder({ ...FILES, out: 'a file' });
    const { code, stderr } = await runMain(WORDS, { cwd });
    expect([code, stderr.includes('[cannot-write]')]).toEqual([1, true]);
  });

  it('keeps what was not checked apart from what passed', async () => {
    const cwd = makeFolder(FILES);
    await runMain(WORDS, { cwd });
    const page = readText(cwd, 'out/report.html');
    const basil = page.slice(page.indexOf('>beds/basil.png</bdi></h2>'));
    const unknown = basil.slice(basil.indexOf('class="unknown"'), basil.indexOf('</section>'));
    expect(unknown).toContain('Not checked');
    expect(unknown).toContain('sheet-fit');
    expect(basil.slice(basil.indexOf('<details>'), basil.indexOf('</details>'))).not.toContain(
      'Piece against the sheet',
    );
  });
});
