/** The same thing written in another way brings the same findings: a danger does not depend on how it is put down. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format } from "../server/format/format.ts";
import { rules } from "../server/rules/list.ts";
import { generate } from "./helpers/generate.ts";
import { generateStanding } from "./helpers/generate-wide.ts";
import { otherwise } from "./helpers/otherwise.ts";
import { findingsOf, inSetting } from "./helpers/sample.ts";
import { hazards } from "./rules/hazards.table.ts";
import { samplesOf } from "./rules/recorded/record.ts";

/** What they are about is the name or the order that a rewriting changes. */
const ofWriting = ["demand/line-against-name", "record/answer-without-query"];

const written: readonly string[] = [
  ...rules.filter(({ id }) => !ofWriting.includes(id)).flatMap((rule) => samplesOf(rule).map(({ text }) => text)),
  ...hazards.flatMap(({ fault, right, setting, rightSetting }) => [
    inSetting(fault, setting).text,
    inSetting(right, rightSetting).text,
  ]),
];

const anySchedule = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...written) },
  { weight: 1, arbitrary: fc.nat(1_000_000).map(generateStanding) },
  { weight: 1, arbitrary: fc.nat(1_000_000).map((seed) => generate({ ways: 9, waysPerBoard: 4, seed, mix: true })) },
);

/** A section of a route is marked by itself. */
const once = (names: readonly string[], found: readonly string[]): readonly string[] =>
  names.includes("routes in two sections") ? [...new Set(found)] : found;

const found = (text: string): string[] =>
  findingsOf(text)
    .map(({ check, severity }) => `${check} ${severity}`)
    .sort();

describe("a schedule", () => {
  it("brings the same findings, however it is written", () => {
    const some = fc.uniqueArray(fc.constantFrom(...Object.keys(otherwise)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(anySchedule, some, (text, names) => {
        const other = names.reduce((now, name) => otherwise[name]?.(now) ?? now, text);
        expect(once(names, found(other)), other).toEqual(once(names, found(text)));
      }),
      { numRuns: 250 },
    );
  });

  it("brings the same findings, once it is laid out", () => {
    fc.assert(
      fc.property(anySchedule, (text) => {
        expect(found(format(text)?.text ?? text)).toEqual(found(text));
      }),
      { numRuns: 60 },
    );
  });

  it.each(["containment/shared-cpc-too-small", "rcd/upstream-blinded-by-dc", "coordination/rcd-below-device"])(
    "brings %s where the design stands in a circuit type",
    (id) => {
      const own = rules.filter((rule) => rule.id === id).flatMap(samplesOf);
      const typed = own.map(({ text }) => otherwise["designs as circuit types"]?.(text) ?? "");
      const counts = (texts: readonly string[]) =>
        texts.map((text) => findingsOf(text).filter(({ check }) => check === id).length);
      expect(counts(typed)).toEqual(counts(own.map(({ text }) => text)));
      expect(Math.max(...counts(typed))).toBeGreaterThan(0);
    },
  );

  it.each(Object.keys(otherwise))("can be written with %s", (name) => {
    const all = [...written, generate({ ways: 30, waysPerBoard: 6, seed: 4, mix: true })];
    expect(all.filter((text) => otherwise[name]?.(text) !== text).length).toBeGreaterThan(4);
  });
});
