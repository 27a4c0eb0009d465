/** The first so many of each check, in their order, and how many more there are of which. */
export function firstOfEach<T extends { readonly check: string }>(
  findings: readonly T[],
  most: number,
): { readonly first: readonly T[]; readonly more: ReadonlyMap<string, number> } {
  const more = new Map<string, number>();
  // Nearly always: nothing is counted that cannot be too many.
  if (findings.length <= most) return { first: findings, more };
  const seen = new Map<string, number>();
  const first = findings.filter(({ check }) => {
    const count = (seen.get(check) ?? 0) + 1;
    seen.set(check, count);
    if (count > most) more.set(check, count - most);
    return count <= most;
  });
  return { first, more };
}
