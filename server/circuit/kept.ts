/**
 * Works an answer out once for each object and keeps it as long as the object lives. Facts and ways are never changed:
 * an edit makes new ones for what it touches, so that a question about a whole installation costs the way that changed.
 */
export function memoByObject<K extends object, T>(compute: (key: K) => T): (key: K) => T {
  const kept = new WeakMap<K, { readonly value: T }>();
  return (key) => {
    const before = kept.get(key);
    if (before) return before.value;
    const value = compute(key);
    kept.set(key, { value });
    return value;
  };
}
