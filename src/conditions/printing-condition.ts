import type { IccProfile } from '../icc/profile.ts';

/** What a printer, its ink and its paper make of colours. */
export interface PrintingCondition {
  /** Id of the seed, or the name of the maker's own file. */
  readonly id: string;
  readonly name: string;
  /** True for a stand-in that is nobody's printer: what it finds is advice. */
  readonly reference: boolean;
  /** Whose measurements it rests on, as their licence wants it said; null for a maker's own profile. */
  readonly attribution: string | null;
  readonly profile: IccProfile;
}
