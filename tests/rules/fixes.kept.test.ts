/** Over all examples and all dangers: no fix takes away a reading, or what is installed, and puts in what would pass; none writes what cannot be read. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Entry, entriesOfFile } from "../../server/readings/entries.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { dangers } from "../helpers/dangers.ts";
import { generate } from "../helpers/generate.ts";
import { random } from "../helpers/random.ts";
import { sheetOf } from "../helpers/sheet.ts";

const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };
const examples = join(import.meta.dirname, "../../examples");

const onTheWall: ReadonlySet<string> = new Set([
  ...["device", "cable", "rcd", "outlet-rcd", "behind", "main-switch", "cutout", "tails", "bonding", "busbar"],
  ...["earthing-conductor", "afdd", "fused", "settings"],
]);

/** What a fix must not take away, by its address. */
const kept = (file: Pick<LoadedFile, "model">): Map<string, Entry> =>
  new Map(
    entriesOfFile(file.model)
      .filter(({ reading, address }) => reading !== undefined || onTheWall.has(address.line?.word ?? ""))
      .map((entry) => [entry.at, entry]),
  );

const applied = (file: LoadedFile, { spot }: Finding, edits: Finding["fixes"][number]["edits"]): string =>
  file.document.segments
    .map((segment) =>
      segment === spot.segment
        ? edits
            .toSorted((a, b) => b.start - a.start)
            .reduce((text, { start, end, text: fresh }) => text.slice(0, start) + fresh + text.slice(end), segment.text)
        : segment.text,
    )
    .join("");

const problemsOf = (file: Pick<LoadedFile, "model">): number => [...file.model.problems.values()].flat().length;

interface Bent {
  readonly fixes: number;
  readonly bent: string[];
}

function bentIn(text: string, name: string): Bent {
  const file = fileOfText("sample.ways", text);
  const own = checkProject(file, alone).files.find((entry) => entry.file === file);
  const findings = (own?.findings ?? []).flatMap((one) => [one, ...(one.explains ?? [])]);
  const before = kept(file);
  let fixes = 0;
  const bent = findings
    .filter(({ check }) => !check.startsWith("language/"))
    .flatMap((finding) =>
      finding.fixes.flatMap((fix) => {
        fixes++;
        const made = applied(file, finding, fix.edits);
        const then = fileOfText("sample.ways", made);
        if (problemsOf(then) > problemsOf(file)) return [`${name}: ${finding.check}: ${fix.title}: cannot be read`];
        const after = kept(then);
        const lost = [...before].filter(([at, entry]) => after.get(at)?.meaning !== entry.meaning);
        // What was misread or written wrongly is said in words, and what stood there stays.
        const told = made.split(" was ").length > text.split(" was ").length;
        return lost.length === 0 || told ? [] : [`${name}: ${finding.check}: ${fix.title}: ${lost.map(([at]) => at)}`];
      }),
    );
  return { fixes, bent };
}

const sum = (all: readonly Bent[]) => ({
  fixes: all.reduce((total, { fixes }) => total + fixes, 0),
  bent: all.flatMap(({ bent }) => bent),
});

describe("no fix replaces a reading or an installed part by what would pass", () => {
  it("in any example", () => {
    const texts = readdirSync(examples, { recursive: true, encoding: "utf8" }).filter((one) => one.endsWith(".ways"));
    const { fixes, bent } = sum(texts.map((name) => bentIn(readFileSync(join(examples, name), "utf8"), name)));
    expect(bent).toEqual([]);
    expect(fixes).toBeGreaterThan(3);
  });

  it("of any danger put into a sound installation that is built", () => {
    const all = dangers.flatMap(({ name, spoil }, at) => {
      const text = generate({ ways: 4, waysPerBoard: 12, seed: 4177 + at });
      const spoilt = spoil(sheetOf(text), random(at + 1));
      return spoilt ? [bentIn(spoilt.text, name)] : [];
    });
    const { fixes, bent } = sum(all);
    expect(bent).toEqual([]);
    expect(fixes).toBeGreaterThan(10);
  });
});
