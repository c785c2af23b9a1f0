import type { Confidence, Source, Span } from './records.ts';

export type PressMethod = 'flat-press' | 'mug-press' | 'tumbler-press' | 'oven';

export type PressureWord =
  | 'light'
  | 'light-medium'
  | 'medium'
  | 'medium-firm'
  | 'firm'
  | 'wrap tension'
  | 'sleeve tension';

/** A range and the first point to try in it. */
export interface StartingSpan extends Span {
  readonly start: number;
}

/** A narrower (or, for large panels, longer) time for some articles. */
export interface TimeVariant {
  readonly when: string;
  readonly timeS: Span;
  /** Blanks of the catalogue that the words describe. */
  readonly blanks?: readonly string[];
}

/** How a kind of blank is pressed. Common practice: the blank maker's sheet wins. */
export interface PressRecipe {
  readonly id: string;
  readonly name: string;
  readonly method: PressMethod;
  /** Whole degrees, rounded from the Fahrenheit values as commonly stated. */
  readonly temperatureC: StartingSpan;
  readonly temperatureF: StartingSpan;
  readonly timeS: StartingSpan;
  /** Left out when the time counts for the whole piece. */
  readonly timeIsPer?: 'position';
  readonly positions?: { readonly usual: number; readonly sometimes: number };
  readonly timeVariants?: readonly TimeVariant[];
  readonly pressure: PressureWord;
  readonly pressureNote?: string;
  readonly prePress: string;
  readonly peel: string;
  readonly coolDown: string;
  /** Flat presses: from the bottom up. Round bodies: from the body outwards. */
  readonly layers: readonly string[];
  readonly notes?: string;
  /** Other recipes for the same articles. */
  readonly alternatives?: readonly string[];
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

/** Pressure on the work; without `max` it means this and up. */
export interface PressureRange {
  readonly psi: { readonly min: number; readonly max?: number };
  readonly bar: { readonly min: number; readonly max?: number };
}

export interface PressureWords {
  readonly note: string;
  readonly light: PressureRange;
  readonly medium: PressureRange;
  readonly firm: PressureRange;
  readonly sources: readonly Source[];
}

/** A rule of the press that holds for every recipe. */
export interface PressRule {
  readonly id: string;
  readonly text: string;
  /** Given when it is only about pieces with two printable faces. */
  readonly sides?: 2;
  readonly sources: readonly Source[];
}

/** A material that looks like a blank and is none. */
export interface NoRecipe {
  readonly material: string;
  readonly why: string;
  readonly sources: readonly Source[];
}

/** The gravest first. */
export const SIGNAL_WORDS = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const;
export type SignalWord = (typeof SIGNAL_WORDS)[number];

/**
 * A caution that informs and defers. It is about every piece, unless it names families, press methods or blanks:
 * then about each piece that one of the lists holds.
 */
export interface Caution {
  readonly id: string;
  /** How much is at stake. @see ANSI Z535 and ISO 3864-2, from memory; which of them is our own judgement */
  readonly signalWord: SignalWord;
  readonly hazard: string;
  /** While pressing, or about the finished piece. */
  readonly when: 'pressing' | 'finished';
  readonly text: string;
  /** Who or what has the last word. */
  readonly defersTo: string;
  readonly families?: readonly string[];
  readonly methods?: readonly PressMethod[];
  readonly blanks?: readonly string[];
  readonly sources: readonly Source[];
}
