/** Lines that are gone and lines that are new, each as often as it is. */
export function differences(before: readonly string[], after: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const line of before) left.set(line, (left.get(line) ?? 0) + 1);
  const fresh = after.filter((line) => {
    const count = left.get(line) ?? 0;
    if (count > 0) left.set(line, count - 1);
    return count === 0;
  });
  const gone = before.filter((line) => {
    const count = left.get(line) ?? 0;
    if (count > 0) left.set(line, count - 1);
    return count > 0;
  });
  return [...gone.map((line) => `− ${line.trim()}`), ...fresh.map((line) => `+ ${line.trim()}`)];
}
