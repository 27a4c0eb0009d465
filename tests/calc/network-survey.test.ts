/** Branches of a network given other conductances, beside the network solved anew with a linear algebra library (ml-matrix). */
import { describe, expect, test } from "vitest";
import type { Resistor } from "../../server/calc/network.ts";
import { surveyOf, withBranches } from "../../server/calc/network-survey.ts";
import { resistanceBetween } from "../helpers/resistance.ts";

const square: readonly Resistor[] = [
  { from: "A", to: "B", ohms: 1 },
  { from: "B", to: "C", ohms: 2 },
  { from: "C", to: "D", ohms: 0.5 },
  { from: "D", to: "A", ohms: 1.5 },
];

describe("a reading from A to C", () => {
  const survey = surveyOf(square);
  const port = survey.place({ from: "A", to: "C" });
  const branch = survey.place({ from: "A", to: "B" });
  const other = survey.place({ from: "B", to: "D" });
  const read = withBranches(survey, [port], [branch, other]);

  test.each([
    [0, 0],
    [1, 0],
    [0.25, 1],
    [-0.5, 0.1],
    [2, 3],
  ])("with %d S more from A to B and %d S from B to D", (more, across) => {
    const resistors: readonly Resistor[] = [
      ...square.map((one) => (one.to === "B" ? { ...one, ohms: 1 / (1 + more) } : one)),
      { from: "B", to: "D", ohms: across === 0 ? Number.POSITIVE_INFINITY : 1 / across },
    ];
    expect(read([more, across])[0]).toBeCloseTo(resistanceBetween(resistors, "A", "C"), 9);
  });
});

test("a reading of a network of several loops, each with branches of its own and one in common", () => {
  const braced: readonly Resistor[] = [
    ...square,
    { from: "B", to: "D", ohms: 0.8 },
    { from: "C", to: "E", ohms: 1.1 },
    { from: "E", to: "D", ohms: 0.7 },
  ];
  const ends = [
    ["A", "C"],
    ["B", "E"],
    ["A", "E"],
    ["C", "D"],
  ] as const;
  const survey = surveyOf(braced);
  const read = withBranches(
    survey,
    ends.map(([from, to]) => survey.place({ from, to })),
    [],
  );
  const solved = ends.map(([from, to]) => resistanceBetween(braced, from, to));
  for (const [at, ohms] of read([]).entries()) expect(ohms).toBeCloseTo(solved[at] ?? Number.NaN, 9);
});
