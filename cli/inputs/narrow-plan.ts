import { resolve } from 'node:path';
import type { InputPlan } from './plan-inputs.ts';
import type { PlannedArtwork } from './planned-artwork.ts';

/** Of a plan what is in these files; words that name nothing, and what is passed over, were told of before. */
export function narrowPlan({ planned }: InputPlan, files: ReadonlySet<string>, cwd: string): InputPlan {
  return {
    missing: [],
    planned: planned.map((argument) => ({
      ...argument,
      artworks: argument.artworks.filter((artwork) => files.has(fileOf(artwork, cwd))),
      passedOver: 0,
      repeats: 0,
      isPart: true,
    })),
  };
}

function fileOf({ origin, path }: PlannedArtwork, cwd: string): string {
  switch (origin.kind) {
    case 'file':
      return origin.file;
    case 'entry':
      return origin.archive;
    default:
      return resolve(cwd, path);
  }
}
