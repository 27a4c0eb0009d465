/** Computes on first use and keeps the answer. */
export function lazy<T>(compute: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}
