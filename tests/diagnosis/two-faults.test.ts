import { describe, expect, it } from "vitest";
import type { CircuitFault } from "../../server/calc/circuit-network.ts";
import { diagnose } from "../../server/diagnosis/index.ts";
import type { Sheet } from "../../server/diagnosis/sheet.ts";
import { radialOf, ringOf, sheetOf } from "./helpers.ts";

const ring = ringOf(60, [5, 15, 25, 35, 45, 55]);
const radial = radialOf([8, 6, 7, 9, 5]);
const open = (conductor: "line" | "neutral" | "cpc", leg: number): CircuitFault => ({
  kind: "open",
  conductors: [conductor],
  leg,
});
const joint = (conductor: "line" | "neutral" | "cpc", leg: number, ohms: number): CircuitFault => ({
  kind: "joint",
  conductor,
  leg,
  ohms,
});
const contact = (place: string, conductor: "line" | "neutral" | "cpc", ohms: number): CircuitFault => ({
  kind: "contact",
  conductor,
  place,
  ohms,
});

const changed = (sheet: Sheet, change: (value: number, at: number) => number): Sheet => ({
  ...sheet,
  readings: sheet.readings.map((reading, at) => ({ ...reading, value: change(reading.value, at) })),
});

describe("two at once, where no single fault fits", () => {
  it.each<[string, Sheet, string, readonly RegExp[]]>([
    [
      "a break in the cable and a poor contact",
      sheetOf(ring, { faults: [open("line", 2), contact("s5", "cpc", 0.4)] }),
      "cable-and-point",
      [/line is open between s2 and s3/, /protective conductor has a poor contact of about 0\.4\d? Ω at s5/],
    ],
    [
      "a joint and crossed pins",
      sheetOf(ring, {
        faults: [joint("line", 1, 0.5), { kind: "swapped", pair: ["line", "neutral"], place: "s4" }],
      }),
      "cable-and-point",
      [/joint of about 0\.(49|5\d?) Ω lies in the line/, /at s4/],
    ],
    [
      "a break and a joint in the same leg of two conductors",
      sheetOf(ring, { faults: [open("cpc", 0), joint("line", 0, 0.8)] }),
      "two-conductors",
      [/protective conductor is open between the board and s1/, /joint of about 0\.(79|8\d?) Ω lies in the line/],
    ],
    [
      "two joints in one conductor of a radial",
      sheetOf(radial, { faults: [joint("cpc", 0, 0.5), joint("cpc", 3, 0.4)] }),
      "two-in-one-conductor",
      [
        /joint of about 0\.(4[7-9]|5\d?) Ω lies in the protective conductor between the board and p1/,
        /joint of about 0\.(3[7-9]|4\d?) Ω lies in the protective conductor between p3 and p4/,
      ],
    ],
    [
      "leads that were not nulled and a joint",
      changed(sheetOf(ring, { faults: [joint("cpc", 2, 0.6)] }), (value) => value + 0.25),
      "leads-and-fault",
      [/joint of about 0\.(5\d?|6\d?) Ω lies in the protective conductor/, /leads were not nulled/],
    ],
    [
      "a slip of the pen and a break",
      changed(sheetOf(ring, { faults: [open("neutral", 3)] }), (value, at) => (at === 10 ? value * 10 : value)),
      "fault-and-slip",
      [/neutral is open/, /is written 10 times too high/],
    ],
  ])("%s", (_, sheet, id, says) => {
    const [first] = diagnose(sheet).explanations;
    expect(first).toMatchObject({ id, fits: true });
    for (const word of says) expect(first?.sentence).toMatch(word);
  });

  it("a single fault that fits is never passed over for two", () => {
    for (const faults of [[open("line", 2)], [joint("cpc", 1, 0.5)], [contact("s3", "line", 0.3)]]) {
      const [first] = diagnose(sheetOf(ring, { faults })).explanations;
      expect(first?.fits).toBe(true);
      expect(first?.id).not.toMatch(/two-|-and-/);
    }
  });
});

describe("the next test", () => {
  it("is there wherever explanations share the first place", () => {
    const spurred = ringOf(60, [5, 15, 25, 35, 45, 55], [["s3", "x1", 4]]);
    const offX1 = /take x1 off .* about 0\.28 Ω supports the first explanation, about 0\.68 Ω the second/;
    const toS2 =
      /measure the protective conductor from the first leg to s2 .* about 0\.30 Ω supports it, about 0\.18 Ω/;
    for (const [fault, wanted] of [
      [contact("x1", "line", 0.4), offX1],
      [joint("line", 7, 0.4), offX1],
      [contact("s2", "cpc", 0.12), toS2],
    ] as const) {
      const found = diagnose(sheetOf(spurred, { faults: [fault] }));
      expect(found.explanations.some(({ alike }) => alike)).toBe(true);
      expect(found.nextTest?.sentence).toMatch(wanted);
    }
  });

  it("takes a point off to tell its contact from a joint behind it", () => {
    const spurred = ringOf(60, [5, 15, 25, 35, 45, 55], [["s3", "x1", 4]]);
    const found = diagnose(sheetOf(spurred, { faults: [contact("x1", "line", 0.4)] }));
    expect(found.nextTest?.sentence).toMatch(/take x1 off and read L-[NE] on the ends of its cable/);
    expect(found.nextTest?.telling).toBeGreaterThan(2);
  });

  it("is a look, where no reading would tell", () => {
    const short = ringOf(20, [5, 10, 15]);
    const contactOrSlip = diagnose(sheetOf(short, { faults: [contact("s2", "neutral", 0.05)] }));
    expect(contactOrSlip.explanations.filter(({ alike }) => alike).length).toBeGreaterThan(1);
    expect(contactOrSlip.nextTest).toMatchObject({ telling: 0 });
    expect(contactOrSlip.nextTest?.sentence).toMatch(/Take s2 off its box/);
    expect(contactOrSlip.note).toMatch(/Neither these readings/);
    const jointOrSize = diagnose(sheetOf(short, { faults: [joint("line", 1, 0.06)] }));
    expect(jointOrSize.nextTest?.sentence).toMatch(/Inspect the conductor sizes/);
  });
});

it("one contact far off the sizes that are tried first is not taken for two faults", () => {
  const long = ringOf(68, [4, 11, 17, 22, 32, 40, 43, 50, 60]);
  const { explanations } = diagnose(sheetOf(long, { faults: [contact("s2", "line", 1.194)] }));
  expect(explanations[0]?.sentence).toMatch(/^The line has a poor contact of about 1\.[12]\d? Ω at s2/);
});
