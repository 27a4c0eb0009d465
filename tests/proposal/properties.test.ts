import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cableText, deviceText } from "../../server/proposal/lines.ts";
import type { Proposal } from "../../server/proposal/proposal.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";
import { firstWay, lineOf, proposed, ratingOf } from "./helpers.ts";

interface Circuit {
  readonly kind: "ring" | "radial";
  readonly route: string;
  readonly length: number;
  readonly Ib: number | undefined;
  readonly serves: string;
  readonly place: string;
  readonly ze: number;
  readonly fault: number;
  readonly earthing: string;
  readonly premises: string;
  readonly three: boolean;
  readonly harmonics: number;
  /** What stands there already: a kind that is kept. */
  readonly device: string;
  readonly cable: string;
  readonly load: string;
  readonly work: "new" | "existing";
}

const routes = [
  "route clipped method C",
  "route conduit 25 mm method B",
  "route conduit 25 mm method B grouped 3 ambient 35 °C",
  "route wall method 102 depth 30 mm",
  "route ceiling method 101",
  "route clipped method C insulated 200 mm",
  "route tray grouped 4 tray-layer",
  "route buried depth 600 mm",
  "route clipped method C\n  route conduit method B",
  "route clipped method C\n  route buried depth 600 mm",
  "route wall method 103",
  "route wall method A",
  "route trunking method B grouped 5",
  "route duct",
  "route free-air",
  "route ladder grouped 3 ladder-layer",
];
const devices = [
  "BS EN 60898 C16 6 kA",
  "BS EN 60898 D16 10 kA",
  "BS EN 61009 B32 6 kA 30 mA type A",
  "BS EN 61009 C20 10 kA 100 mA type A",
  "BS 88-2 20 A",
  "BS 88-2 32 A gM",
  "BS 88-3 20 A",
  "BS 3036 20 A",
  "BS 1361 20 A",
  "BS 3871 20 A type-2",
];
const cables = [
  "flat-twin line 2.5 mm² cpc 1.5 mm²",
  "singles line 2.5 mm² cpc 2.5 mm²",
  "singles 90 °C line 2.5 mm² cpc 2.5 mm²",
  "singles line 2.5 mm² cpc-by conduit",
  "multicore line 2.5 mm² cpc 2.5 mm² cores 3",
  "multicore 90 °C line 2.5 mm² cpc 2.5 mm² cores 3",
  "armoured 90 °C line 6 mm² cpc-by armour cores 2",
  "armoured 90 °C line 6 mm² cpc 6 mm² cores 3",
  "armoured line 6 mm² cpc 6 mm² cores 3",
  "mineral line 2.5 mm² cpc 2.5 mm²",
  "flex line 2.5 mm² cpc 2.5 mm²",
  "armoured 90 °C aluminium line 25 mm² cpc 25 mm² cores 3",
  "armoured 90 °C line 16 mm² cpc 16 mm² carries 90 A drop 2.9 mV r1 1.15 mΩ r2 1.15 mΩ",
];
const uses = [
  "sockets",
  "lighting",
  "cooker",
  "water-heater",
  "heating",
  "motor",
  "ev-charger",
  "appliance",
  "floor-heating",
  "alarms",
];

const plain = {
  device: fc.constant(""),
  cable: fc.constant(""),
  load: fc.constant(""),
  work: fc.constant("new" as const),
};

/** What else may stand in a way: a kind of device and of cable that is kept, loads as they are bought, existing work. */
const kept = {
  device: fc.option(fc.constantFrom(...devices), { nil: "" }),
  cable: fc.option(fc.constantFrom(...cables), { nil: "" }),
  load: fc.constantFrom("", "3 kW", "9.5 kW rated 240 V", "7.4 kW"),
  work: fc.constantFrom("new" as const, "existing" as const),
};

const circuit = (standing: typeof plain | typeof kept) =>
  fc.record<Circuit>({
    kind: fc.constantFrom("ring", "radial", "radial", "radial"),
    route: fc.constantFrom(...routes),
    length: fc.integer({ min: 3, max: 90 }),
    Ib: fc.option(
      fc.double({ min: 0.5, max: 70, noNaN: true }).map((value) => Math.round(value * 10) / 10),
      {
        nil: undefined,
      },
    ),
    serves: fc.constantFrom(...uses),
    place: fc.constantFrom("", "bathroom", "outdoors", "agricultural", "caravan", "marina", "construction", "pool"),
    ze: fc.constantFrom(0.12, 0.3, 0.6, 0.8),
    fault: fc.constantFrom(0.9, 3, 7.5),
    earthing: fc.constantFrom("TN-S", "TN-C-S", "TT"),
    premises: fc.constantFrom("dwelling", "commercial"),
    three: fc.boolean(),
    harmonics: fc.constantFrom(0, 0, 20, 40),
    ...standing,
  });
const circuits = circuit(plain);
const written = circuit(kept).map((one) => ({ ...one, ...enclosed(one) }));

/** Cables without a sheath are drawn into something, or nothing would ever fit. */
const enclosed = ({ cable, route }: Circuit): { readonly route: string } => ({
  route:
    cable.startsWith("singles") && !/^route (?:conduit|trunking|duct)/.test(route) ? "route conduit method B" : route,
});

const linesOf = ({ kind, route, length, Ib, serves, place, three, harmonics, ...more }: Circuit): string =>
  [
    `way 1 ${kind} "Circuit" {`,
    ...(more.device ? [`  device ${more.device}`] : []),
    ...(more.cable ? [`  cable ${more.cable}`] : []),
    ...(more.load && Ib === undefined ? [`  load ${more.load}`] : []),
    ...(three && kind === "radial" ? ["  phase three"] : []),
    `  ${route}`,
    `  length ${length} m`,
    ...(Ib === undefined ? [] : [`  Ib ${Ib} A`]),
    `  serves ${kind === "ring" ? "sockets" : serves}`,
    ...(place ? [`  place ${place}`] : []),
    ...(three && harmonics > 0 ? [`  neutral-harmonics ${harmonics} %`] : []),
    "}",
  ].join("\n");

const settingOf = ({ ze, fault, earthing, premises, three, work }: Circuit) => ({
  premises,
  work,
  supply: `earthing ${earthing}\nphases ${three ? "three" : "single"}\nZe ${ze} Ω\nIpf ${fault} kA`,
});

/** What a proposal cannot know, or leaves to whoever writes the way. */
const notItsOwn: ReadonlySet<string> = new Set([
  // Which lampholders are fitted, and what the charging unit does inside.
  "design/lampholder-device",
  "rcd/charger-dc-detection",
  // A figure to look up is no fault of what it passes by.
  "design/passes-as-remembered",
  // The load, the relay of a motor and the maker's let-through.
  "design/current-not-stated",
  "design/motor-overload-missing",
  "design/motor-input-not-stated",
  "design/ring-heavy-load",
]);

/** What passes a limit on memory is information, and would be a fault of the proposal all the same. */
const whateverItsGravity =
  /^(?:design|drop|coordination)\/|^place\/(?:.*-without-rcd|socket-shares-rcd)|^rcd\/sensitivity-too/;
const ifGraver = /^(?:language|loop|fault|rcd|network)\/|^energy\/live-conductor-too-thin$/;

/** What the device and the cable of the way can be wrong about. */
const faultsIn = (text: string) => {
  const from = text.split("\n").findIndex((line) => /^ *way 1/.test(line)) + 1;
  return findingsOf(text).filter(
    ({ check, line, severity }) =>
      line >= from &&
      !notItsOwn.has(check) &&
      (whateverItsGravity.test(check) || (severity !== "information" && ifGraver.test(check))),
  );
};

/** Whether nothing is proposed: then nothing is written either, and why is said in words. */
function isRefused({ outcome, reasons, fix }: Proposal): boolean {
  if (outcome === "fits") return false;
  expect(fix).toBeUndefined();
  expect(reasons).toContainEqual(expect.stringMatching(/\p{L}{3}/u));
  return true;
}

describe("whatever is proposed", () => {
  it("raises no error and no warning of design, loop, drop, fault level or RCD when it is written into the file", () => {
    let fitted = 0;
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { proposal, after } = proposed(linesOf(circuit), settingOf(circuit));
        if (isRefused(proposal)) return;
        fitted++;
        expect(faultsIn(after)).toEqual([]);
        expect(after).toContain(`${proposal.device?.replace("device ", "")}\n`);
      }),
      { numRuns: 300 },
    );
    expect(fitted).toBeGreaterThan(100);
  });

  it("is the smallest: the next smaller cable raises an error, or is ruled out for a reason with its numbers", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { proposal } = proposed(linesOf(circuit), settingOf(circuit));
        if (proposal.outcome !== "fits") return;
        for (const { candidate, why } of proposal.ruledOut) {
          expect(`${candidate}: ${why}`).toMatch(/\d.*: .*(?:\d|smaller than is usually fitted|not a usual rating)/);
        }
        const sizes = proposal.ruledOut.flatMap(({ candidate }) => /^([\d.]+) mm²/.exec(candidate)?.[1] ?? []);
        const proposedSize = lineOf(proposal);
        expect(sizes.map(Number)).toEqual(sizes.map(Number).toSorted((a, b) => a - b));
        for (const size of sizes) expect(Number(size)).toBeLessThan(proposedSize);
        const all = [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300];
        expect(sizes.map(Number)).toEqual(all.slice(0, all.indexOf(proposedSize)));
      }),
      { numRuns: 150 },
    );
  });

  it("is no larger than the checks ask: they object to the next smaller cable, unless a convention ruled it out", () => {
    let objected = 0;
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { proposal, after } = proposed(linesOf(circuit), settingOf(circuit));
        const smaller = proposal.ruledOut.findLast(({ candidate }) => candidate.includes("mm²"));
        if (proposal.outcome !== "fits" || !smaller) return;
        // Without a load the checks have no current to calculate with; and what is plugged in is not known to them.
        if (circuit.Ib === undefined && /^(?:voltage drop|third harmonics)/i.test(smaller.why)) return;
        if (smaller.why.startsWith("radial of socket-outlets")) return;
        const [line = "", cpc = ""] = smaller.candidate.split(", cpc ");
        const text = after.replace(/line [\d.]+ mm²(.*)cpc [\d.]+ mm²/, `line ${line}$1cpc ${cpc}`);
        expect(text).not.toBe(after);
        expect(`${smaller.candidate}: ${smaller.why}: ${faultsIn(text).length > 0}`).toMatch(/true$/);
        objected++;
      }),
      { numRuns: 200 },
    );
    expect(objected).toBeGreaterThan(60);
  });

  it("stays as it is when it is asked for again", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { proposal, after } = proposed(linesOf(circuit), settingOf(circuit));
        if (proposal.outcome !== "fits") return;
        const again = proposed(firstWay(fileOfText("a.ways", after)).way.segment.text, settingOf(circuit)).proposal;
        expect([again.device, again.cable]).toEqual([proposal.device, proposal.cable]);
        expect(again.fix?.edits).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});

/** Conductors in parallel carry the load together, and one of them alone a fault in it. */
describe("whatever lies in parallel", () => {
  const parallel = fc.record({
    cable: fc.constantFrom(
      "singles line 2.5 mm² cpc 2.5 mm²",
      "singles 90 °C line 2.5 mm² cpc 2.5 mm²",
      "multicore line 2.5 mm² cpc 2.5 mm² cores 4",
      "armoured 90 °C line 6 mm² cpc 6 mm² cores 4",
      "armoured 90 °C line 16 mm² cpc-by armour cores 4",
    ),
    count: fc.integer({ min: 2, max: 6 }),
    cpcs: fc.constantFrom("", " cpcs 1"),
    route: fc.constantFrom("route clipped method C", "route tray method E", "route ladder"),
    length: fc.constantFrom(3, 8, 20, 40, 80, 150),
    Ib: fc.constantFrom(20, 40, 55, 63, 100, 200),
    serves: fc.constantFrom("heating", "motor", "appliance"),
    device: fc.constantFrom("", "BS 88-2 63 A", "BS 88-3 63 A", "BS EN 60898 C32 10 kA"),
    three: fc.boolean(),
    ze: fc.constantFrom(0.05, 0.12, 0.3),
  });

  it("is proposed so that no fault in one of them is objected to", () => {
    let fitted = 0;
    fc.assert(
      fc.property(parallel, ({ cable, count, cpcs, route, length, Ib, serves, device, three, ze }) => {
        const lines = [
          'way 1 radial "Circuit" {',
          ...(device ? [`  device ${device}`] : []),
          `  cable ${cable} parallel ${count}${cpcs} arranged "As drawn"`,
          ...(three ? ["  phase three"] : []),
          `  ${cable.startsWith("singles") ? "route trunking method B" : route}`,
          `  length ${length} m`,
          `  Ib ${Ib} A`,
          `  serves ${serves}`,
          "}",
        ].join("\n");
        const fault = Math.round((three ? 460 : 230) / ze) / 1000;
        const supply = `earthing TN-S\nphases ${three ? "three" : "single"}\nZe ${ze} Ω\nIpf ${fault} kA`;
        const { proposal, after } = proposed(lines, { premises: "industrial", supply });
        if (proposal.outcome !== "fits") return;
        fitted++;
        expect(faultsIn(after)).toEqual([]);
      }),
      { numRuns: 150 },
    );
    expect(fitted).toBeGreaterThan(50);
  });

  it("is larger where the smallest fault would overheat one of them behind a fuse", () => {
    const lines = `way 1 radial "Kiln" {
  device BS 88-2 63 A
  cable singles line 2.5 mm² cpc 2.5 mm² parallel 6 arranged "As drawn"
  phase three
  route trunking method B
  length 80 m
  Ib 63 A
  serves appliance
}`;
    const supply = "earthing TN-C-S\nphases three\nZe 0.3 Ω\nIpf 1.6 kA";
    const { proposal, after } = proposed(lines, { premises: "industrial", supply });
    expect(proposal.ruledOut.map(({ candidate, by }) => `${candidate} ${by}`)).toContain(
      "2.5 mm², cpc 2.5 mm² Live conductors in a fault",
    );
    expect(lineOf(proposal)).toBe(4);
    expect(faultsIn(after)).toEqual([]);
  });
});

describe("whatever stands in the way already", () => {
  it("is proposed so that the checks accept it, and never larger than they ask", () => {
    let fitted = 0;
    let objected = 0;
    fc.assert(
      fc.property(written, (circuit) => {
        const { proposal, after } = proposed(linesOf(circuit), settingOf(circuit));
        if (isRefused(proposal)) return;
        fitted++;
        expect(faultsIn(after)).toEqual([]);
        const smaller = proposal.ruledOut.findLast(({ candidate }) => candidate.includes("mm²"));
        const byDrop = /^(?:voltage drop|third harmonics)/i.test(smaller?.why ?? "");
        // A ring is made for what may be plugged in, and a load that is not stated is calculated with by nobody else.
        if (!smaller || (byDrop && (circuit.kind === "ring" || (circuit.Ib === undefined && !circuit.load)))) return;
        if (smaller.why.startsWith("radial of socket-outlets")) return;
        const [line = "", cpc = ""] = smaller.candidate.split(", cpc ");
        const text = after.replace(/line [\d.]+ mm²( .*?cpc) [\d.]+ mm²|line [\d.]+ mm²/, (_, between) =>
          cpc && between ? `line ${line}${between} ${cpc}` : `line ${line}`,
        );
        expect(text).not.toBe(after);
        expect(`${smaller.candidate}: ${smaller.why}: ${faultsIn(text).length > 0}`).toMatch(/true$/);
        objected++;
      }),
      { numRuns: 600 },
    );
    expect(fitted).toBeGreaterThan(100);
    expect(objected).toBeGreaterThan(80);
  });
});

describe("monotone", () => {
  const breakers = circuits.map((circuit) => ({ ...circuit, kind: "radial" as const, Ib: circuit.Ib ?? 12 }));

  /**
   * Where no breaker fits a fuse may, and what stands behind it is another matter: beyond 32 A a fuse has 5 s to blow,
   * and so the heavier circuit may do with less.
   */
  const byBreaker = (...proposals: readonly { readonly device?: string }[]) =>
    proposals.every(({ device }) => device?.includes("BS EN 6") ?? true);

  // Once a radial of sockets had 2.5 mm² behind 6 A, as such radials are made, and 1.5 mm² buried behind 25 A.
  const buriedSockets = {
    kind: "radial",
    route: "route buried depth 600 mm",
    length: 3,
    Ib: 0.5,
    serves: "sockets",
    place: "",
    ze: 0.12,
    fault: 0.9,
    earthing: "TN-S",
    premises: "dwelling",
    three: false,
    harmonics: 0,
    device: "",
    cable: "",
    load: "",
    work: "new",
  } as const;

  it("longer never gets smaller", () => {
    fc.assert(
      fc.property(breakers, fc.integer({ min: 1, max: 60 }), (circuit, more) => {
        const near = proposed(linesOf(circuit), settingOf(circuit)).proposal;
        const far = proposed(linesOf({ ...circuit, length: circuit.length + more }), settingOf(circuit)).proposal;
        if (!byBreaker(near, far)) return;
        if (near.outcome === "fits" && far.outcome === "fits") {
          expect(lineOf(far)).toBeGreaterThanOrEqual(lineOf(near));
          expect(ratingOf(far)).toBe(ratingOf(near));
        } else expect([near.outcome, far.outcome]).not.toEqual(["none", "fits"]);
      }),
      { numRuns: 120 },
    );
  });

  it("heavier never gets smaller", () => {
    fc.assert(
      fc.property(breakers, fc.integer({ min: 1, max: 25 }), (circuit, more) => {
        const light = proposed(linesOf(circuit), settingOf(circuit)).proposal;
        const heavy = proposed(linesOf({ ...circuit, Ib: circuit.Ib + more }), settingOf(circuit)).proposal;
        if (!byBreaker(light, heavy)) return;
        if (light.outcome === "fits" && heavy.outcome === "fits") {
          expect(lineOf(heavy)).toBeGreaterThanOrEqual(lineOf(light));
          expect(ratingOf(heavy)).toBeGreaterThanOrEqual(ratingOf(light));
        } else expect([light.outcome, heavy.outcome]).not.toEqual(["none", "fits"]);
      }),
      { numRuns: 120, examples: [[buriedSockets, 20]] },
    );
  });
});

describe("smaller by hand", () => {
  /** The next smaller cable is written into the file and the checks are asked: where a rule decides they must object. */
  it("is what the checks object to where capacity or the loop decided", () => {
    const cases = [
      {
        Ib: 30,
        length: 10,
        smaller: { line: 4, cpc: 1.5 },
        route: "route clipped method C insulated 100 mm",
        check: "design/device-over-capacity",
      },
      {
        Ib: 30,
        length: 70,
        smaller: { line: 6, cpc: 2.5 },
        route: "route clipped method C",
        check: "loop/design-loop-over-limit",
      },
    ] as const;
    for (const { Ib, length, smaller, route, check } of cases) {
      const lines = `way 1 radial "Kiln" {\n  ${route}\n  length ${length} m\n  Ib ${Ib} A\n  serves heating\n}`;
      const { proposal, after } = proposed(lines, { supply: "earthing TN-S\nZe 0.60 Ω\nIpf 0.9 kA" });
      expect(lineOf(proposal)).toBeGreaterThan(smaller.line);
      const thin = cableText({ construction: "flat-twin", insulation: 70, ...smaller });
      const written = after.replace(/cable .*/, thin);
      expect(written).not.toBe(after);
      expect(faultsIn(after)).toEqual([]);
      expect(findingsOf(written).map((finding) => finding.check)).toContain(check);
      expect(proposal.device).toBe(deviceText({ standard: "BS EN 60898", curve: "B", rating: 32, breaking: 6000 }));
    }
  });
});
