/** What is worse is never reported as less: no danger goes out of sight because it grew. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { generate } from "./helpers/generate.ts";
import { generateStanding } from "./helpers/generate-wide.ts";
import { allFaults, exampleNames, exampleText } from "./helpers/mutations.ts";
import { worsenings } from "./helpers/worsening.ts";

const grades = { information: 1, warning: 2, error: 3 };

/**
 * They are about a figure that is no standard one, that looks like another's, or that Table 54.7 would have where nothing
 * can be calculated: a worse one can be free of it.
 */
const notOfDegree = [
  "design/device-rating-unusual",
  "fault/one-phase-figure",
  "protective/earthing-conductor-too-small",
];

/** The gravest of what is new in a text. */
function grave(name: string, text: string, before: ReadonlySet<string>): number {
  const fresh = allFaults(name, text).filter(
    ({ check, line, severity }) =>
      !before.has(`${check} ${line}`) && (severity === "error" || !notOfDegree.includes(check)),
  );
  return Math.max(0, ...fresh.map(({ severity }) => grades[severity]));
}

/** Where a worse figure is reported as less than a milder one was. */
function lessWhereWorse(name: string, text: string, which: number): string[] {
  const all = worsenings(text);
  const one = all[which % all.length];
  if (!one) return [];
  const before = new Set(allFaults(name, text).map(({ check, line }) => `${check} ${line}`));
  const lines = text.split("\n");
  const found = one.written.map((line) => grave(name, lines.with(one.line, line).join("\n"), before));
  return found.flatMap((grade, at) => {
    const milder = found.slice(0, at).findIndex((other) => other >= grades.warning && other > grade);
    return milder < 0
      ? []
      : [`${name}:${one.line + 1} ${one.written[at]?.trim()} after ${one.written[milder]?.trim()}`];
  });
}

const which = fc.nat(100_000);

describe("the worse a figure, the graver what is found", () => {
  it("in the examples", () => {
    fc.assert(
      fc.property(fc.constantFrom(...exampleNames), which, (name, at) => {
        expect(lessWhereWorse(name, exampleText(name), at)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("in sound installations of every kind", () => {
    fc.assert(
      fc.property(fc.nat(1_000_000), which, fc.boolean(), (seed, at, old) => {
        const text = old ? generateStanding(seed) : generate({ ways: 8, waysPerBoard: 5, seed, mix: true });
        expect(lessWhereWorse("generated.ways", text, at)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
