/** The value of `make`, made at the first call and kept. */
export function once<Value extends object>(make: () => Value): () => Value {
  let kept: Value | null = null;
  return () => {
    kept ??= make();
    return kept;
  };
}
