/** Keys that go through a list, one place at a time. */

/** For each arrow that leads anywhere, how many places on. */
type Arrows = Readonly<Record<string, 1 | -1>>;

export const sideways: Arrows = { ArrowRight: 1, ArrowLeft: -1 };
export const upAndDown: Arrows = { ArrowDown: 1, ArrowUp: -1 };

/** What Home, End or an arrow leads to from the place `from`; nothing for other keys and beyond the ends. */
export function ledTo<T>(key: string, list: readonly T[], from: number, arrows: Arrows): T | undefined {
  if (key === "Home") return list[0];
  if (key === "End") return list.at(-1);
  const step = arrows[key];
  return step && list[from + step];
}
