/** What a merge must hold whatever the edits were. Addresses and meanings are asked of the model, not of the merge. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format } from "../../server/format/format.ts";
import { isMerged, type Merged, merge, viewOf } from "../../server/merge/merge.ts";
import { textOf } from "../../server/merge/write.ts";
import { entriesOfFile } from "../../server/readings/entries.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { type ThreeWay, threeWay } from "./edits.ts";

/** A thousand merges where nothing else is asked for; a hunt for a rare fault takes more. */
const runs = Number(process.env.WAYFILE_RUNS ?? 1000);
const longest = 600_000;
const marks = { size: 7, style: "diff3", base: "base", ours: "ours", theirs: "theirs" } as const;
const version = (text: string) => ({ text, bom: false });

function merged({ base, ours, theirs }: ThreeWay): Merged | undefined {
  const outcome = merge({ base: version(base), ours: version(ours), theirs: version(theirs) });
  return isMerged(outcome) ? outcome : undefined;
}

/** What stands at each address; several at one address are a list. */
function facts(text: string): ReadonlyMap<string, string> {
  const all = new Map<string, string[]>();
  for (const { at, meaning, on, with: used, address } of entriesOfFile(fileOfText("a.ways", text).model)) {
    const one = `${at.replace(/ #\d+$/, "").replace(/ struck-out\b/, "")}${on ? ` (${on} ${used?.join() ?? ""})` : ""}`;
    all.set(one, [...(all.get(one) ?? []), meaning].sort());
    if (address.nth !== undefined) all.set(`${one} several`, ["yes"]);
  }
  return new Map([...all].map(([at, meanings]) => [at, meanings.join(" | ")]));
}

const addresses = (...maps: readonly ReadonlyMap<string, string>[]): string[] => [
  ...new Set(maps.flatMap((map) => [...map.keys()])),
];

/** Lines of a text that say something, by how often. */
const linesOf = (text: string): string[] =>
  text
    .split(/\r\n|\n|\r/)
    .map((line) => line.trim().replace(/\s+/g, " "))
    .filter((line) => line !== "");

const holds = (property: (texts: ThreeWay) => void, options = {}, share = 1): void => {
  fc.assert(fc.property(threeWay(options), property), { numRuns: Math.ceil(runs * share) });
};

/** Every address as a three-way merge of tables would have it, and a conflict where there is no such answer. */
function isWhatBothSay(texts: ThreeWay, result: Merged): void {
  const [base, ours, theirs] = [texts.base, texts.ours, texts.theirs].map(facts) as [Facts, Facts, Facts];
  const views = { ours: facts(viewOf(result.pieces, "ours")), theirs: facts(viewOf(result.pieces, "theirs")) };
  for (const at of addresses(base, ours, theirs, views.ours, views.theirs)) {
    const [was, is, other] = [base.get(at), ours.get(at), theirs.get(at)];
    const said = JSON.stringify({ at, was, is, other });
    if (other === was) expect(views.ours.get(at), said).toBe(is);
    if (is === was) expect(views.theirs.get(at), said).toBe(other);
    if (is === was || other === was || is === other) continue;
    expect(result.conflicts.length, said).toBeGreaterThan(0);
    expect([views.ours.get(at), views.theirs.get(at)], said).toEqual([is, other]);
  }
}

function losesNoLine(texts: ThreeWay, result: Merged): void {
  const left = new Set(linesOf(textOf(result, marks)));
  const before = new Set(linesOf(texts.base));
  const lost = [...linesOf(texts.ours), ...linesOf(texts.theirs)].filter(
    (line) => !before.has(line) && !left.has(line),
  );
  expect(lost).toEqual([]);
}

function isMarked(texts: ThreeWay, result: Merged): void {
  const text = textOf(result, marks);
  expect((text.match(/^<{7} ours$/gm) ?? []).length).toBe(result.conflicts.length);
  expect((text.match(/^>{7} theirs$/gm) ?? []).length).toBe(result.conflicts.length);
  const neat = result.conflicts.length === 0 && !format(texts.ours) && !format(texts.theirs);
  if (neat) expect(format(text)).toBeUndefined();
}

describe("whatever three versions say", () => {
  it(
    "each change of one side is in the result, what both changed differently is a conflict, and no line is lost",
    () => {
      let tried = 0;
      holds((texts) => {
        const result = merged(texts);
        if (!result) throw new Error("not merged");
        tried++;
        isWhatBothSay(texts, result);
        losesNoLine(texts, result);
        isMarked(texts, result);
      });
      expect(tried).toBeGreaterThanOrEqual(runs);
    },
    longest,
  );

  it(
    "a side that changed nothing leaves the other as it is, to the byte",
    () => {
      holds(
        ({ base, ours }) => {
          for (const texts of [
            { base, ours, theirs: base },
            { base, ours: base, theirs: ours },
            { base, ours, theirs: ours },
          ]) {
            const result = merged(texts);
            fc.pre(result !== undefined);
            expect(textOf(result, marks)).toBe(ours);
          }
        },
        { broken: true },
        0.2,
      );
    },
    longest,
  );

  it(
    "swapped sides give the same facts and the same conflicts, and lines that cannot be read are kept",
    () => {
      holds(
        ({ base, ours, theirs }) => {
          const one = merged({ base, ours, theirs });
          const other = merged({ base, ours: theirs, theirs: ours });
          expect(one === undefined).toBe(other === undefined);
          fc.pre(one !== undefined && other !== undefined);
          losesNoLine({ base, ours, theirs }, one);
          const sidesOf = ({ conflicts }: Merged) =>
            conflicts.map((conflict) => [conflict.ours, conflict.theirs] as const);
          const swapped = sidesOf(other).map(([a, b]) => [b, a] as const);
          const sorted = (pairs: readonly (readonly [string, string])[]) => pairs.map((pair) => pair.join("=")).sort();
          expect(sorted(swapped)).toEqual(sorted(sidesOf(one)));
          expect(facts(viewOf(other.pieces, "theirs"))).toEqual(facts(viewOf(one.pieces, "ours")));
          expect(facts(viewOf(other.pieces, "ours"))).toEqual(facts(viewOf(one.pieces, "theirs")));
        },
        { broken: true },
        0.3,
      );
    },
    longest,
  );

  it(
    "layout decides nothing: formatted versions have the same conflicts and give the same facts",
    () => {
      holds(
        ({ base, ours, theirs }) => {
          const neat = (text: string) => format(text)?.text ?? text;
          const one = merged({ base, ours, theirs });
          const other = merged({ base: neat(base), ours: neat(ours), theirs: neat(theirs) });
          fc.pre(one !== undefined && other !== undefined);
          expect(other.conflicts.length).toBe(one.conflicts.length);
          expect(facts(viewOf(other.pieces, "ours"))).toEqual(facts(viewOf(one.pieces, "ours")));
        },
        {},
        0.2,
      );
    },
    longest,
  );

  it(
    "line ends, the byte order mark and a missing last line end are those of the side that changed them",
    () => {
      holds(
        ({ base, ours, theirs }) => {
          const plain = merged({ base, ours, theirs });
          const crlf = (text: string) => text.replaceAll("\n", "\r\n");
          fc.pre(plain !== undefined);
          const text = textOf(plain, marks);
          for (const texts of [
            { base, ours: crlf(ours), theirs },
            { base: crlf(base), ours: crlf(ours), theirs: crlf(theirs) },
          ]) {
            const result = merged(texts);
            expect(result && textOf(result, marks)).toBe(crlf(text));
          }
          const open = merged({ base, ours: ours.replace(/\n+$/, ""), theirs });
          if (open?.conflicts.length === 0) expect(textOf(open, marks)).toBe(text.replace(/\n$/, ""));
        },
        {},
        0.1,
      );
      const mark = { base: "wayfile 1\n", ours: "\ufeffwayfile 1\n", theirs: 'wayfile 1\nuse "a.ways"\n' };
      const result = merge({
        base: version(mark.base),
        ours: { text: "wayfile 1\n", bom: true },
        theirs: version(mark.theirs),
      });
      expect(isMerged(result) && textOf(result, marks)).toBe(`\ufeff${mark.theirs}`);
    },
    longest,
  );
});

type Facts = ReadonlyMap<string, string>;
