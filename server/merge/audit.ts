/**
 * The books of a merge: every statement, with the day and the instruments of the tests it stands in, and every address
 * are counted in each version and in what came out. Nothing here knows how the merge was made.
 */

import type { Body } from "./item.ts";
import { isTests } from "./key.ts";
import type { Tree } from "./tree.ts";

interface Versions {
  readonly base: { readonly body: Body };
  readonly ours: { readonly body: Body };
  readonly theirs: { readonly body: Body };
}

/** Whether each side's changes are in the result as that side would read it, and nothing is there that no side had. */
export function addsUp({ base, ours, theirs }: Versions, views: Readonly<Record<"ours" | "theirs", Tree>>): boolean {
  if ("unreadable" in views.ours || "unreadable" in views.theirs) return false;
  const [was, here, there] = [booksOf(base.body), booksOf(ours.body), booksOf(theirs.body)];
  return (
    addsUpFor(was, here, there, booksOf(views.ours.body)) && addsUpFor(was, there, here, booksOf(views.theirs.body))
  );
}

interface Books {
  readonly statements: Counts;
  readonly addresses: Addresses;
}

const booksOf = (body: Body): Books => ({ statements: statementsOf(body), addresses: addressesOf(body) });

const addsUpFor = (base: Books, own: Books, other: Books, result: Books): boolean =>
  balances(base.statements, own.statements, other.statements, result.statements) &&
  stands(base.addresses, own.addresses, other.addresses, result.addresses);

type Counts = ReadonlyMap<string, number>;

function balances(base: Counts, own: Counts, other: Counts, result: Counts): boolean {
  const all = new Set([...base.keys(), ...own.keys(), ...other.keys(), ...result.keys()]);
  for (const statement of all) {
    const [was, is, there, now] = [base, own, other, result].map((counts) => counts.get(statement) ?? 0);
    if (was === undefined || is === undefined || there === undefined || now === undefined) return false;
    const expected = is + there - was;
    // A change of this side alone is in this side's view, whatever else happened.
    if (there === was ? now !== is : now < Math.min(is, there, expected) || now > Math.max(is, there, expected))
      return false;
  }
  return true;
}

/**
 * Whether each address that both sides have stands in the result, as often as both have it at least; and none of a block
 * stands twice that no version had twice.
 */
function stands(base: Addresses, own: Addresses, other: Addresses, result: Addresses): boolean {
  const often = (counts: Counts, at: string): number => counts.get(at) ?? 0;
  const isKept = [...own.all].every(([at, is]) => often(result.all, at) >= Math.min(is, often(other.all, at)));
  const isSingle = [...result.blocks].every(
    ([at, now]) => now <= Math.max(1, ...[base, own, other].map(({ blocks }) => often(blocks, at))),
  );
  return isKept && isSingle;
}

interface Addresses {
  /** How often each thing is stated, whatever is stated of it. */
  readonly all: Counts;
  /** Of these, what opens a block: an installation, a board, a way, the tests of a day. */
  readonly blocks: Counts;
}

function addressesOf(body: Body): Addresses {
  const all = new Map<string, number>();
  const blocks = new Map<string, number>();
  const add = (counts: Map<string, number>, at: string) => counts.set(at, (counts.get(at) ?? 0) + 1);
  const visit = ({ items }: Body, within: string): void => {
    for (const item of items) {
      // A line that cannot be read has no address but what is written there.
      for (const claim of item.claims.length > 0 ? item.claims : [item.spelt]) {
        add(all, `${within}${claim}`);
        if (item.row?.opens) add(blocks, `${within}${claim}`);
      }
      if (item.body) visit(item.body, `${within}${item.key}\n`);
    }
  };
  visit(body, "");
  return { all, blocks };
}

function statementsOf(body: Body): Counts {
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
