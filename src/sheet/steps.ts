/**
 * Long work that rests now and then, so that whoever does it may look at a clock, tell how far it is, or end it: the library
 * knows none of these.
 */
export type Steps<Result> = Generator<void, Result, void>;

/** Does it without a rest. */
export function doSteps<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Asked at every rest: nothing where the work may go on at once. What it throws, or rejects with, ends the work. */
export type GiveWay = () => Promise<void> | undefined;

/** Does it, and at every rest what `giveWay` wants. @throws what that throws */
export async function doStepsGivingWay<Result>(steps: Steps<Result>, giveWay: GiveWay): Promise<Result> {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    const way = giveWay();
    // A rest that is not needed costs no turn of the loop of events.
    if (way !== undefined) await way;
  }
}
