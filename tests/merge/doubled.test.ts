/** What stands twice under one number or name, on one side or more: never lost, and never merged without a word. */
import { describe, expect, it } from "vitest";
import { addsUp } from "../../server/merge/audit.ts";
import { isMerged, type Merged, merge, viewOf } from "../../server/merge/merge.ts";
import { Memo, type Tree, treeOf } from "../../server/merge/tree.ts";

const schedule = ({ instrument = "", board = "", ahead = "", way = "", reading = "" }) => `wayfile 1
${instrument}installation "Net loft" {
${board}  board A "Loft" {
${ahead}    way 1 radial "Light" {
      live 2026-03-05 {
        voltage      231 V
${reading}      }
    }
${way}    way 9 spare
  }
}
`;
const way = `    way 42 radial "Winch" {
      Ib           6 A
    }
`;
const things = {
  way: { way },
  "way far from the other": { ahead: way },
  board: { board: '  board B "Slip" {\n    way 1 spare\n  }\n' },
  instrument: { instrument: 'instrument M1 "Multifunction tester" {\n  due          2027-11-03\n}\n' },
  "reading line": { reading: "        Zs           0.42 Ω\n" },
} as const;

/** The thing so many times; of the one that stands apart, the second behind the other way. */
function times(thing: keyof typeof things, count: number): string {
  const [[slot, text] = ["", ""]] = Object.entries(things[thing]);
  if (slot === "ahead") return schedule({ ahead: count > 0 ? text : "", way: text.repeat(Math.max(count - 1, 0)) });
  return schedule({ [slot]: text.repeat(count) });
}
const version = (text: string) => ({ text, bom: false });
function merged(base: string, ours: string, theirs: string): Merged {
  const outcome = merge({ base: version(base), ours: version(ours), theirs: version(theirs) });
  if (!isMerged(outcome)) throw new Error(outcome.unreadable);
  return outcome;
}
const names = Object.keys(things) as (keyof typeof things)[];
const each = (counts: readonly (readonly [base: number, ours: number, theirs: number])[]) =>
  names.flatMap((thing) => counts.map((some) => [thing, ...some] as const));

describe("a number or name that stands twice", () => {
  it.each(
    each([
      [0, 1, 2],
      [0, 2, 1],
      [1, 0, 2],
      [1, 2, 0],
      [1, 2, 3],
      [2, 1, 3],
      [2, 0, 1],
      [2, 1, 0],
    ]),
  )("%s: %i in the base, %i and %i on the sides is one conflict with all of both in it", (thing, was, is, other) => {
    const [base, ours, theirs] = [times(thing, was), times(thing, is), times(thing, other)];
    const result = merged(base, ours, theirs);
    expect(result.conflicts).toHaveLength(1);
    for (const [side, text] of Object.entries({ ours, theirs }))
      expect(linesOf(viewOf(result.pieces, side as "ours" | "theirs")), side).toEqual(linesOf(text));
  });

  it.each(
    each([
      [0, 2, 2],
      [0, 0, 2],
      [0, 2, 0],
      [1, 1, 2],
      [1, 2, 1],
      [1, 2, 2],
      [2, 2, 2],
      [2, 2, 1],
      [2, 1, 2],
      [2, 1, 1],
      [2, 2, 0],
      [2, 2, 3],
    ]),
  )("%s: %i in the base, %i and %i on the sides is what the side that changed it has", (thing, was, is, other) => {
    const result = merged(times(thing, was), times(thing, is), times(thing, other));
    expect(result.conflicts).toEqual([]);
    expect(viewOf(result.pieces, "ours")).toBe(times(thing, is === was ? other : is));
  });

  it("keeps the other circuit that one side gave the number, and what the other side put behind it", () => {
    const second = way.replace("Winch", "Crane");
    const after = '    way 43 radial "Kettle" {\n      Ib           8 A\n    }\n';
    for (const both of [way + second, second + way, way + way]) {
      const [base, ours, theirs] = [way, both, way + after].map((text) => schedule({ way: text })) as Three;
      const result = merged(base, ours, theirs);
      expect(result.conflicts).toEqual([]);
      expect(linesOf(viewOf(result.pieces, "ours"))).toEqual(linesOf(schedule({ way: both + after })));
    }
  });
});

describe("the books of a merge", () => {
  const memo = new Memo();
  const tree = (text: string): Tree => treeOf(text, memo);
  const body = (text: string) => tree(text) as Extract<Tree, { body: unknown }>;
  const books = (thing: keyof typeof things, was: number, is: number, other: number, ours: number, theirs: number) =>
    addsUp(
      { base: body(times(thing, was)), ours: body(times(thing, is)), theirs: body(times(thing, other)) },
      { ours: tree(times(thing, ours)), theirs: tree(times(thing, theirs)) },
    );

  it.each(names)("%s: do not add up where both sides added it and it is gone", (thing) => {
    expect(books(thing, 0, 1, 2, 0, 0)).toBe(false);
    expect(books(thing, 0, 2, 1, 0, 0)).toBe(false);
    expect(books(thing, 0, 1, 1, 0, 0)).toBe(false);
    expect(books(thing, 1, 2, 3, 0, 0)).toBe(false);
    expect(books(thing, 0, 2, 2, 1, 1)).toBe(false);
    expect(books(thing, 0, 1, 2, 1, 2)).toBe(true);
  });

  it("do not add up where a number stands with another circuit's lines, or twice though each side has it once", () => {
    const other = way.replace("Winch", "Crane").replace("6 A", "7 A");
    const [ours, theirs] = [schedule({ way }), schedule({ way: other })];
    const versions = { base: body(schedule({})), ours: body(ours), theirs: body(theirs) };
    expect(addsUp(versions, { ours: tree(ours), theirs: tree(theirs) })).toBe(true);
    const both = tree(schedule({ way: way + other }));
    expect(addsUp(versions, { ours: both, theirs: both })).toBe(false);
    const neither = tree(schedule({}));
    expect(addsUp(versions, { ours: neither, theirs: neither })).toBe(false);
  });
});

type Three = [string, string, string];
const linesOf = (text: string): string[] => text.split("\n").toSorted();

describe("tests that one side struck out", () => {
  const reading = "        Zs           0.42 Ω\n";
  const struckOut = `        struck-out by "R.M." "Read on way 2"\n${reading}`;

  it("stand in the conflict as that side wrote them, whichever side is ours", () => {
    const texts = [reading, struckOut].map((lines) =>
      schedule({ ahead: "" }).replace("        voltage      231 V\n", lines),
    );
    const [plain = "", struck = ""] = texts;
    const [ours, theirs] = [merged(schedule({}), plain, struck), merged(schedule({}), struck, plain)];
    expect(ours.conflicts).toHaveLength(1);
    expect(ours.conflicts.map(({ ours, theirs }) => [ours, theirs])).toEqual(
      theirs.conflicts.map(({ ours, theirs }) => [theirs, ours]),
    );
    expect(viewOf(ours.pieces, "theirs")).toBe(struck);
    expect(viewOf(ours.pieces, "ours")).toBe(plain);
  });
});
