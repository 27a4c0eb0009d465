/** What a change costs in a diff: one line for one fact, whatever stands next to it, and git names its writer. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { format } from "../../server/format/format.ts";
import { TestRepository } from "../helpers/repository.ts";

const examples = join(import.meta.dirname, "../../examples");
const schedules = readdirSync(examples, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ways"));
const textOf = (name: string): string => readFileSync(join(examples, name), "utf8");
const formatted = (text: string): string => format(text)?.text ?? text;

/** Ways a line may change: a figure that is longer, a text that is, or a comment behind it. */
const changes: readonly ((line: string) => string)[] = [
  (line) => line.replace(/(\d)( (?:Ω|MΩ|A|m|kA|ms|mm²)(?=\s|$))/, "$100$2"),
  (line) => line.replace(/"([^"]+)"/, '"$1, in the words of the owner"'),
  (line) => (/[#{}]/.test(line) || line.trim() === "" ? line : `${line}  # as it was read on the day`),
];

describe("a fact that changes", () => {
  it.each(schedules)("is one line of a diff: every line of %s", (name) => {
    const lines = textOf(name).split("\n");
    let changed = 0;
    for (const turn of [0, 1]) {
      // Every second line changes, so that each that does has neighbours that do not.
      const fresh = lines.map((line, at) => {
        const change = changes[Math.floor(at / 2) % changes.length];
        return at % 2 === turn && !/^\s*#/.test(line) && change ? change(line) : line;
      });
      changed += fresh.filter((line, at) => line !== lines[at]).length;
      expect(formatted(fresh.join("\n")).split("\n")).toEqual(fresh);
    }
    expect(changed).toBeGreaterThan(8);
  });

  it("that comes or goes moves no other, though its word is the longest", () => {
    const way = (...facts: readonly string[]) =>
      `board A {\n  way 1 radial "Yard" {\n${facts.map((fact) => `    ${fact}\n`).join("")}  }\n}\n`;
    const before = formatted(way("device BS 3036 5 A # old", "length 3 m", "Ib 2 A"));
    for (const fact of ["supplementary-bonding fitted", 'note "x"', "floor-area 12 m²", "behind east"]) {
      const after = formatted(way("device BS 3036 5 A # old", "length 3 m", "Ib 2 A", fact)).split("\n");
      const word = fact.split(" ")[0] as string;
      expect(after.filter((line) => !line.trim().startsWith(word)).join("\n")).toBe(before);
    }
  });
});

const repositories: TestRepository[] = [];
afterAll(() => {
  for (const repository of repositories) repository.end();
});

describe("git blame", () => {
  it("names who wrote a fact, after three others have written beside it and formatted", () => {
    const repository = new TestRepository();
    repositories.push(repository);
    const file = "workshop.ways";
    let text = textOf("heron-wharf/workshop.ways");
    repository.commit("As tested", { [file]: text }, "First Tester");
    const change = (who: string, from: string, to: string) => {
      expect(text).toContain(from);
      text = formatted(text.replace(from, to));
      repository.commit(who, { [file]: text }, who);
    };
    const line = /^ +device .*$/m.exec(text)?.[0] ?? "";
    change("Second Tester", line, `${line}\n      supplementary-bonding none "Not a wet room"`);
    const insulation = /^ +insulation .*$/m.exec(text)?.[0] ?? "";
    change("Third Tester", insulation, `temperature 14 °C\n${insulation} # with the dimmer out`);
    const loop = /^ +Zs .*$/m.exec(text)?.[0] ?? "";
    change("Fourth Tester", loop, loop.replace(/[\d.]+ Ω/, "0.777 Ω"));
    const who = repository.git("blame", "--line-porcelain", file);
    const writers = [...who.matchAll(/^author (.*)$/gm)].map(([, name = ""]) => name);
    const count = (name: string) => writers.filter((one) => one === name).length;
    expect([count("Second Tester"), count("Third Tester"), count("Fourth Tester")]).toEqual([1, 2, 1]);
    expect(count("First Tester")).toBe(text.trimEnd().split("\n").length - 4);
  });
});
