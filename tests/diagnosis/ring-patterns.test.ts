import { describe, expect, it } from "vitest";
import type { CircuitFault } from "../../server/calc/circuit-network.ts";
import { diagnose } from "../../server/diagnosis/index.ts";
import type { Sheet } from "../../server/diagnosis/sheet.ts";
import { ringOf, type Simulated, sheetOf } from "./helpers.ts";

const points = [5, 15, 25, 35, 45, 55];
const ring = ringOf(60, points);
const open = (...which: ("line" | "neutral" | "cpc")[]): CircuitFault => ({
  kind: "open",
  conductors: which,
  leg: 3,
});
const bridge: CircuitFault = {
  kind: "bridge",
  from: "s2",
  to: "s5",
  length: 5,
};
const swapped = (one: "line" | "neutral", other: "neutral" | "cpc"): CircuitFault => ({
  kind: "swapped",
  pair: [one, other],
  place: "s4",
});

interface Pattern {
  readonly is: string;
  readonly simulated: Simulated;
  /** The kind that comes first, or those that share the first place because no reading parts them. */
  readonly kinds: readonly string[];
  readonly says: RegExp;
  /** What the test that parts the leading two must speak of. */
  readonly next?: RegExp;
}

/** The fault patterns of a 60 m ring in 2.5/1.5 mm² cable with six sockets, to two decimals as a meter shows them. */
const patterns: readonly Pattern[] = [
  {
    is: "line open",
    simulated: { faults: [open("line")] },
    kinds: ["open-line"],
    says: /line is open between s3 and s4/,
  },
  {
    is: "neutral open, which reads the same wherever it is",
    simulated: { faults: [open("neutral")] },
    kinds: ["open-neutral"],
    says: /neutral is open .* the readings do not show where/,
    next: /measure the neutral from the first leg to s[34] by a long lead/,
  },
  {
    is: "protective conductor open",
    simulated: { faults: [open("cpc")] },
    kinds: ["open-cpc"],
    says: /protective conductor is open between s3 and s4/,
  },
  {
    is: "all conductors open",
    simulated: { faults: [open("line", "neutral", "cpc")] },
    kinds: ["open-all"],
    says: /cable is cut/,
    next: /measure the line from the first leg to s[34] by a long lead/,
  },
  {
    is: "joint in the line",
    simulated: {
      faults: [{ kind: "joint", conductor: "line", leg: 3, ohms: 0.5 }],
    },
    kinds: ["joint-line"],
    says: /joint of about 0\.(?:49|50|51) Ω lies in the line between s3 and s4/,
    next: /measure the line from the first leg to s\d by a long lead/,
  },
  {
    is: "joint in the protective conductor",
    simulated: {
      faults: [{ kind: "joint", conductor: "cpc", leg: 3, ohms: 0.5 }],
    },
    kinds: ["joint-cpc"],
    says: /joint of about 0\.(?:49|50|51) Ω lies in the protective conductor between s3 and s4/,
  },
  {
    is: "poor contact of one outlet",
    simulated: {
      faults: [{ kind: "contact", conductor: "line", place: "s4", ohms: 0.3 }],
    },
    kinds: ["contact-line"],
    says: /contact of about 0\.3\d? Ω at s4/,
  },
  {
    is: "bridged ring",
    simulated: { faults: [bridge] },
    kinds: ["bridge"],
    says: /cable of about 5 m bridges the ring between s2 and s5/,
  },
  {
    is: "bridged, and the line open inside: almost hidden, so the two share the first place",
    simulated: { faults: [bridge, open("line")] },
    kinds: ["bridge", "bridge-open-line"],
    says: /bridges the ring between s2 and s5/,
    next: /Take the ring apart at s[34] and measure the line .* an open reading the second/,
  },
  {
    is: "line and neutral crossed: the same as no earth at the point",
    simulated: { faults: [swapped("line", "neutral")] },
    kinds: ["swapped-line-neutral", "pin-cpc"],
    says: /at s4/,
    next: /Take s4 off its box and look/,
  },
  {
    is: "line and protective conductor crossed: the same as no neutral at the point",
    simulated: { faults: [swapped("line", "cpc")] },
    kinds: ["swapped-line-cpc", "pin-neutral"],
    says: /at s4/,
    next: /Take s4 off its box and look/,
  },
  {
    is: "neutral and protective conductor crossed: the same as another circuit",
    simulated: { faults: [swapped("neutral", "cpc")] },
    kinds: ["swapped-neutral-cpc", "pin-line"],
    says: /at s4/,
    next: /Take s4 off its box and look/,
  },
  {
    is: "legs not crossed",
    simulated: { links: { neutral: "same-leg", cpc: "same-leg" } },
    kinds: ["same-leg-neutral-cpc"],
    says: /not crossed at the board.* in both rounds/,
  },
  {
    is: "one of the two links",
    simulated: { links: { neutral: "one", cpc: "one" } },
    kinds: ["one-link-neutral-cpc"],
    says: /Only one of the two links .* in both rounds/,
  },
  {
    is: "the other of the two links, in one round",
    simulated: { links: { cpc: "last" } },
    kinds: ["one-link-cpc"],
    says: /Only one of the two links .* in the L-E round/,
  },
];

/** Explanations that share the first place. */
const leading = (sheet: Sheet) => diagnose(sheet).explanations.filter(({ alike }) => alike);

describe("fault patterns of a ring", () => {
  it("a sound ring needs no explanation", () => {
    expect(diagnose(sheetOf(ring))).toEqual({ fits: true, explanations: [] });
  });

  it.each(patterns.map((pattern) => [pattern.is, pattern] as const))("%s", (_, { simulated, kinds, says, next }) => {
    const sheet = sheetOf(ring, simulated);
    const found = diagnose(sheet);
    expect(found.fits).toBe(false);
    expect(
      leading(sheet)
        .map(({ id }) => id)
        .sort(),
    ).toEqual([...kinds].sort());
    expect(found.explanations[0]?.fits).toBe(true);
    expect(found.explanations.find(({ id }) => id === kinds[0])?.sentence).toMatch(says);
    if (next) expect(found.nextTest?.sentence).toMatch(next);
    if (kinds.length > 1) expect(found.note).toMatch(/cannot tell/);
  });

  it("a spur that is not drawn; three explanations that five metres of cable cannot part", () => {
    const drawn = ringOf(60, points, [["s3", "x1", 0]]);
    const sheet = sheetOf(drawn, {}, ringOf(60, points, [["s3", "x1", 5]]));
    expect(leading(sheet)[0]).toMatchObject({
      id: "spur",
      parameter: { unit: "m" },
    });
    expect(leading(sheet)[0]?.parameter?.value).toBeCloseTo(5, 0);
    expect(leading(sheet).map(({ id }) => id)).toEqual(["spur", "contact-line", "joint-line"]);
    expect(diagnose(sheet).nextTest?.sentence).toMatch(/take x1 off and read L-E on the ends of its cable/);
  });

  it("a spur off that spur", () => {
    const drawn = ringOf(60, points, [
      ["s3", "x1", 0],
      ["s3", "x2", 0],
    ]);
    const actual = ringOf(60, points, [
      ["s3", "x1", 5],
      ["x1", "x2", 5],
    ]);
    const [first] = leading(sheetOf(drawn, {}, actual));
    expect(first?.id).toBe("two-spurs");
    expect(first?.sentence).toMatch(
      /about 10 m .* at x2\. .* about 5 m .* at x1\. .*one spur off the other, or two spurs/,
    );
  });

  it("a drawn spur with its own reading is sound", () => {
    const spurred = ringOf(60, points, [
      ["s3", "x1", 5],
      ["x1", "x2", 5],
    ]);
    expect(diagnose(sheetOf(spurred)).fits).toBe(true);
  });

  it("two faults in two conductors", () => {
    const faults = [open("cpc"), { kind: "joint", conductor: "neutral", leg: 1, ohms: 0.4 } as const];
    const found = diagnose(sheetOf(ring, { faults }));
    expect(found.explanations[0]).toMatchObject({ id: "two-conductors", fits: true });
    expect(found.explanations[0]?.sentence).toMatch(/joint of about 0\.4\d? Ω lies in the neutral/);
    expect(found.explanations[0]?.sentence).toMatch(/protective conductor is open between s3 and s4/);
  });
});
