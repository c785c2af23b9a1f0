import { inflateSync } from 'node:zlib';
import type { StatedPpi } from './artwork.ts';
import { readColourCodes } from './coded-colour.ts';
import type { ContainerFacts, ContainerLimits, StatedColour } from './container-facts.ts';
import { readPngChunks } from './png-chunks.ts';

type ChunkData = (type: string) => DataView | undefined;

/**
 * Density, colour and frame count of a PNG.
 * @throws `damaged` as `readPngChunks`
 * @see W3C PNG Specification (Third Edition), 11.3.2 (colour), 11.3.4.3 (pHYs), 11.3.6.1 (acTL)
 */
export function readPngFacts(bytes: Uint8Array, limits: ContainerLimits): ContainerFacts {
  const chunks = new Map(readPngChunks(bytes).map(({ type, data }) => [type, data] as const));
  const dataOf: ChunkData = (type) => {
    const data = chunks.get(type);
    return data && new DataView(data.buffer, data.byteOffset, data.byteLength);
  };
  const animation = dataOf('acTL');
  return {
    pages: animation?.byteLength === 8 ? Math.max(1, animation.getUint32(0)) : 1,
    storedPpi: readPhys(dataOf('pHYs')),
    colour: readColour(dataOf, limits),
  };
}

/** Unit 1 is the metre; unit 0 states only the shape of a pixel, which is no length. */
function readPhys(data: DataView | undefined): StatedPpi | null {
  if (data?.byteLength !== 9 || data.getUint8(8) !== 1) return null;
  const [x, y] = [data.getUint32(0), data.getUint32(4)];
  return x > 0 && y > 0 ? { x: x * 0.0254, y: y * 0.0254 } : null;
}

/** The order of precedence is that of the specification, 4.3: cICP, iCCP, sRGB, then gAMA and cHRM. */
function readColour(dataOf: ChunkData, limits: ContainerLimits): StatedColour {
  const codes = dataOf('cICP');
  if (codes?.byteLength === 4) return readColourCodes(codes.getUint8(0), codes.getUint8(1));
  const profile = dataOf('iCCP');
  if (profile) return readProfileChunk(profile, limits);
  if (dataOf('sRGB')) return { kind: 'srgb' };
  return readGamma(dataOf('gAMA'), dataOf('cHRM'));
}

/** Name (1 to 79 bytes), a zero byte, method 0, then the profile as a zlib stream (11.3.2.3). */
function readProfileChunk(chunk: DataView, limits: ContainerLimits): StatedColour {
  const data = new Uint8Array(chunk.buffer, chunk.byteOffset, chunk.byteLength);
  const nameEnd = data.indexOf(0);
  if (nameEnd < 0 || data[nameEnd + 1] !== 0)
    return { kind: 'unusable', reason: 'the profile chunk is malformed' };
  try {
    return {
      kind: 'icc',
      bytes: new Uint8Array(
        inflateSync(data.subarray(nameEnd + 2), { maxOutputLength: limits.maxProfileBytes }),
      ),
    };
  } catch {
    return { kind: 'unusable', reason: 'the profile cannot be unpacked' };
  }
}

const SRGB_GAMMA = 45455; // 1/2.2, in hundred-thousandths, as the sRGB chunk's fallback states it (11.3.2.5)
/** Writers round 1/2.2, down to 0.45: that moves an 8-bit value by one step at most (255 * 0.5 / 45.455 / e = 1.03). */
const GAMMA_TOLERANCE = 500;
/** White, red, green, blue as x and y of IEC 61966-2-1, in hundred-thousandths (11.3.2.1). */
const SRGB_CHROMATICITIES = [31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000];
const CHROMATICITY_TOLERANCE = 100; // 0.001: writers round, and derive these numbers in several ways

/**
 * gAMA and cHRM without a profile: sRGB when they say what sRGB says. Anything else is not converted, because
 * programs disagree about following it, so that the maker should hear of it instead.
 */
function readGamma(gamma: DataView | undefined, chromaticities: DataView | undefined): StatedColour {
  if (!gamma && !chromaticities) return { kind: 'none' };
  const exponent = gamma?.byteLength === 4 ? gamma.getUint32(0) : SRGB_GAMMA;
  const sameGamma = Math.abs(exponent - SRGB_GAMMA) <= GAMMA_TOLERANCE;
  const samePrimaries =
    chromaticities?.byteLength !== 32 ||
    SRGB_CHROMATICITIES.every(
      (value, index) => Math.abs(chromaticities.getUint32(index * 4) - value) <= CHROMATICITY_TOLERANCE,
    );
  if (sameGamma && samePrimaries) return { kind: 'srgb' };
  return {
    kind: 'unusable',
    reason: `the file states a gamma of ${(exponent / 100_000).toFixed(5)} and ${samePrimaries ? 'no primaries of its own' : 'primaries of its own'} without a profile, which programs follow or ignore as they like`,
  };
}
