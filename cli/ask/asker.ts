/** One answer of a list. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  /** More of it, beside the one that is looked at. */
  readonly hint?: string;
}

/** Whoever can be asked: somebody at a terminal. */
export interface Asker {
  /**
   * The value of the choice that was made of those that `search` finds for what is typed, which is empty at first. Where
   * there is none, `otherwise` is told. Does not return where the answer is Ctrl-C: then it interrupts, and throws.
   */
  choose(question: string, search: (typed: string) => readonly Choice[], otherwise: string): Promise<string>;
}
