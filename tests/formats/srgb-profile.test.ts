import { describe, expect, it } from 'vitest';
import { decodeSrgb } from '../../src/colour/srgb.ts';
import { writeSrgbProfile } from '../../src/formats/srgb-profile.ts';
import { isSrgb } from '../../src/icc/is-srgb.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { askWitness, requireWitness } from '../witness.ts';

describe('writeSrgbProfile', () => {
  it('is read back as a version 2.4 display profile, and recognised as sRGB', () => {
    const profile = readProfile(writeSrgbProfile());
    expect(profile).toMatchObject({ version: '2.4', class: 'display', space: 'rgb', connection: 'xyz' });
    expect(isSrgb(profile)).toBe(true);
  });

  it('has the matrix columns that published sRGB profiles have', () => {
    // Of the sRGB v2 profile of the International Color Consortium (sRGB2014.icc), from memory, in s15Fixed16 steps.
    const published = {
      rXYZ: [0.43607, 0.22249, 0.01392],
      gXYZ: [0.38515, 0.71687, 0.09708],
      bXYZ: [0.14307, 0.06061, 0.7141],
    };
    const bytes = Buffer.from(writeSrgbProfile());
    for (const [tag, xyz] of Object.entries(published)) {
      const entry = bytes.indexOf(tag, 128);
      const place = bytes.readUInt32BE(entry + 4);
      xyz.forEach((value, index) => {
        // Rounding of the primaries' adaptation differs in the fourth decimal between makers.
        expect(Math.abs(bytes.readInt32BE(place + 8 + index * 4) / 65536 - value)).toBeLessThan(3e-4);
      });
    }
  });

  it('keeps every byte of header and tag table in order: sizes add up, tags do not overlap', () => {
    const bytes = Buffer.from(writeSrgbProfile());
    expect(bytes.readUInt32BE(0)).toBe(bytes.length);
    expect(bytes.toString('latin1', 36, 40)).toBe('acsp');
    const places = Array.from({ length: bytes.readUInt32BE(128) }, (_, index) => ({
      from: bytes.readUInt32BE(132 + index * 12 + 4),
      size: bytes.readUInt32BE(132 + index * 12 + 8),
    }));
    const distinct = [...new Map(places.map((place) => [place.from, place])).values()].sort(
      (a, b) => a.from - b.from,
    );
    distinct.forEach(({ from, size }, index) => {
      expect(from % 4).toBe(0);
      expect(from + size).toBeLessThanOrEqual(distinct[index + 1]?.from ?? bytes.length);
    });
  });

  it('has a curve within 1e-5 of IEC 61966-2-1, also between its entries', () => {
    const bytes = Buffer.from(writeSrgbProfile());
    const place = bytes.readUInt32BE(bytes.indexOf('rTRC', 128) + 4);
    const entry = (index: number) => bytes.readUInt16BE(place + 12 + index * 2) / 65535;
    for (let step = 0; step < 255 * 8; step++) {
      const at = step / 8;
      const share = at - Math.floor(at);
      const light = entry(Math.floor(at)) * (1 - share) + entry(Math.min(255, Math.floor(at) + 1)) * share;
      // Half a 16-bit step and the bow of the curve between two entries: (1/255)^2 / 8 times its second derivative, 3.4.
      expect(Math.abs(light - decodeSrgb(at / 255))).toBeLessThan(1.5e-5);
    }
  });

  it('is whole to ArgyllCMS and means to Little CMS what its own sRGB means', (context) => {
    requireWitness(context, 'iccdump', 'transicc');
    const files = { 'srgb.icc': writeSrgbProfile() };
    const dump = askWitness('iccdump', ['-v3', 'srgb.icc'], files);
    expect([dump.status, dump.stdout.toString()]).toEqual([
      0,
      expect.stringContaining('Version      = 2.4.0'),
    ]);
    expect(dump.stdout.toString() + dump.stderr).not.toMatch(/error|illegal|invalid/i);
    const colours = '255 0 0\n0 255 0\n0 0 255\n128 128 128\n13 200 77\n';
    const labOf = (profile: string) =>
      askWitness('transicc', ['-n', '-t1', `-i${profile}`, '-o*Lab'], files, colours)
        .stdout.toString()
        .trim()
        .split(/\s+/)
        .map(Number);
    const ours = labOf('srgb.icc');
    const theirs = labOf('*sRGB');
    expect(ours).toHaveLength(15);
    // 1/65536 of rounding in the matrix is about 0.01 in Lab.
    ours.forEach((value, index) => {
      expect(Math.abs(value - theirs[index]!)).toBeLessThan(0.02);
    });
  });
});
