/**
 * The books of a merge: every statement, with the day and the instruments of the tests it stands in, is counted in each
 * version and in what came out. Nothing here knows how the merge was made.
 */
import { isTests } from "./key.ts";
import type { Body, Tree } from "./tree.ts";

interface Versions {
  readonly base: { readonly body: Body };
  readonly ours: { readonly body: Body };
  readonly theirs: { readonly body: Body };
}

/** Whether each side's changes are in the result as that side would read it, and nothing is there that no side had. */
export function addsUp({ base, ours, theirs }: Versions, views: Readonly<Record<"ours" | "theirs", Tree>>): boolean {
  if ("unreadable" in views.ours || "unreadable" in views.theirs) return false;
  const counts = [base, ours, theirs].map(({ body }) => countsOf(body)) as [Counts, Counts, Counts];
  const [was, here, there] = counts;
  return (
    balances(was, here, there, countsOf(views.ours.body)) && balances(was, there, here, countsOf(views.theirs.body))
  );
}

type Counts = ReadonlyMap<string, number>;

function balances(base: Counts, own: Counts, other: Counts, result: Counts): boolean {
  const all = new Set([...base.keys(), ...own.keys(), ...other.keys(), ...result.keys()]);
  for (const statement of all) {
    const [was, is, there, now] = [base, own, other, result].map((counts) => counts.get(statement) ?? 0) as number[];
    if (was === undefined || is === undefined || there === undefined || now === undefined) return false;
    const expected = is + there - was;
    // A change of this side alone is in this side's view, whatever else happened.
    if (there === was ? now !== is : now < Math.min(was, is, there, expected) || now > Math.max(is, there, expected))
      return false;
  }
  return true;
}

function countsOf(body: Body): Counts {
  const counts = new Map<string, number>();
  const visit = ({ items }: Body, within: string): void => {
    for (const item of items) {
      const line = `${within}${item.word} ${item.sense?.text ?? item.spelt}`;
      counts.set(line, (counts.get(line) ?? 0) + 1);
      if (item.body) visit(item.body, isTests(item.row) ? `${item.key}: ` : "");
    }
  };
  visit(body, "");
  return counts;
}
