/**
 * Which tests a way should have, what each should read and against which limit: as a worksheet lists them. BS EN 60228:
 * 19.51 mΩ for a metre of 2.5/1.5 mm²; Table 41.3: 2.73 Ω of B16, cold 2.18 Ω, of which Ze takes 0.30 Ω.
 */
import { describe, expect, it } from "vitest";
import { planBoard } from "../../server/readings/plan-board.ts";
import { planDead } from "../../server/readings/plan-dead.ts";
import { planLive } from "../../server/readings/plan-live.ts";
import { testsByWaveform } from "../../server/readings/plan-rcd.ts";
import type { PlannedTest } from "../../server/readings/planned.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, kind = "radial", setting: Setting = {}) =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 ${kind} "Heater" {\n${lines}\n}`, setting).text), "A"), "1");

const shown = ({ name, expected, bounds, recorded }: PlannedTest): string =>
  [name, expected?.text ?? "–", bounds.map(({ text }) => text).join(", ") || "–", recorded?.text ?? "–"].join(" | ");

const planned = (step: PlannedTest["step"], ...of: Parameters<typeof studied>): string[] => {
  const study = studied(...of);
  return [...planDead(study), ...planLive(study)].filter((test) => test.step === step).map(shown);
};

const cable = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const drawn = `device BS EN 60898 B16 6 kA\n${cable}\nrun A 9 m S1 8 m S2`;

describe("continuity of a radial", () => {
  it("is a line for each point that is drawn, and the highest of them", () => {
    expect(planned("continuity", drawn)).toEqual([
      "R1+R2 at S1 | 0.18 Ω | at most 1.88 Ω cold | –",
      "R1+R2 at S2, the highest | 0.33 Ω | at most 1.88 Ω cold | –",
      "R1+R2, the highest of them | 0.33 Ω | at most 1.88 Ω cold | –",
    ]);
  });

  it("is one line once the highest is written and no other was", () => {
    expect(planned("continuity", `${drawn}\ndead 2026-03-04 {\nR1+R2 0.34 Ω\n}`)).toEqual([
      "R1+R2, the far point | 0.33 Ω | at most 1.88 Ω cold | 0.34 Ω",
    ]);
  });

  it("keeps the latest reading to earth of each point, drawn or not", () => {
    const tests = `dead 2026-03-04 {\nat S2 L-E 0.34 Ω\nat S9 L-N 0.20 Ω\nat S8 L-E 0.50 Ω\n}\ndead 2025-03-04 {\nat S2 L-E 0.30 Ω\n}`;
    expect(planned("continuity", `${drawn}\n${tests}`)).toEqual([
      "R1+R2 at S1 | 0.18 Ω | at most 1.88 Ω cold | –",
      "R1+R2 at S2, the highest | 0.33 Ω | at most 1.88 Ω cold | 0.34 Ω",
      "R1+R2 at S8 | – | at most 1.88 Ω cold | 0.50 Ω",
      "R1+R2, the highest of them | 0.33 Ω | at most 1.88 Ω cold | –",
    ]);
    expect(planned("continuity", `${drawn}\ndead 2026-03-04 {\nat S1 L-E 0.19 Ω\nR1+R2 0.34 Ω\n}`)).toEqual([
      "R1+R2 at S1 | 0.18 Ω | at most 1.88 Ω cold | 0.19 Ω",
      "R1+R2, the far point | 0.33 Ω | at most 1.88 Ω cold | 0.34 Ω",
    ]);
  });
});

describe("insulation of the whole board", () => {
  const board = (...ways: readonly string[]) => {
    const lines = ways.map((reading, at) => {
      const dead = reading === "" ? "" : `dead 2026-03-04 {\ninsulation 500 V L-E ${reading} joined\n}\n`;
      return `way ${at + 1} radial "Heater" {\n${dead}}`;
    });
    const node = nodeOf(installationOf(inSetting(lines.join("\n")).text), "A");
    return planBoard(node.context, node.board.ways).find(({ step }) => step === "insulation")?.expected?.text;
  };
  // One figure a circuit, two circuits of 1 MΩ side by side: half of it.
  it("is that of its circuits side by side, once each was read", () => {
    expect(board("1 MΩ", "1 MΩ")).toBe("0.5 MΩ");
    expect(board("0.8 MΩ")).toBe("0.8 MΩ");
    expect(board("1 MΩ", "")).toBeUndefined();
    expect(board("1 MΩ", "<0.05 MΩ")).toBeUndefined();
    expect(board("1 MΩ", ">1 MΩ")).toBe("at least 0.5 MΩ");
  });
});

// 24 m: r1 0.178 Ω, r2 0.290 Ω; half way round (r1 + r2)/4 is 0.117 Ω, next to the board r1·r2/(r1 + r2) 0.110 Ω.
describe("continuity where no protective conductor is needed", () => {
  const apart = (reading: string) =>
    planned(
      "continuity",
      `device BS EN 60898 B16 6 kA\n${cable}\nlength 17 m\nprotective-measure separation "Shaver unit"\n${reading}`,
    ).length;

  it("is planned only where it was read, either way", () => {
    expect(apart("")).toBe(0);
    expect(apart("dead 2026-03-04 {\nR1+R2 0.34 Ω\n}")).toBe(1);
    expect(apart("dead 2026-03-04 {\nR2 0.21 Ω\n}")).toBe(1);
  });
});

describe("a ring", () => {
  const run = `${cable}\nrun A 8 m S1 8 m S2 8 m A`;
  const ends = "ends r1 0.18 Ω rn 0.18 Ω r2 0.29 Ω";

  it("has its ends, and each point in both rounds, by lengths before it is measured", () => {
    expect(planned("ring-ends", run, "ring")).toEqual([
      "r1, line | 0.18 Ω | – | –",
      "rn, neutral | 0.18 Ω | – | –",
      "r2, protective conductor | 0.29 Ω | – | –",
    ]);
    expect(planned("ring-rounds", run, "ring")).toEqual([
      "L-N at S1 | 0.089 Ω | – | –",
      "L-N at S2 | 0.089 Ω | – | –",
      "L-E at S1 | 0.12 Ω | – | –",
      "L-E at S2 | 0.12 Ω | – | –",
      "R1+R2, the highest line to earth | 0.12 Ω | – | –",
    ]);
  });

  it("is planned by its ends once they are read, between the least and the most where no run is drawn", () => {
    expect(
      planned("ring-rounds", `${run}\ndead 2026-03-04 {\n${ends}\nat S1 L-N 0.10 Ω\n}`, "ring").slice(0, 3),
    ).toEqual(["L-N at S1 | 0.09 Ω | – | 0.10 Ω", "L-N at S2 | 0.09 Ω | – | –", "L-E at S1 | 0.12 Ω | – | –"]);
    expect(
      planned("ring-rounds", `${cable}\ndead 2026-03-04 {\n${ends}\nat S1 L-N 0.10 Ω\n}`, "ring").slice(0, 2),
    ).toEqual(["L-N at S1 | 0.09 Ω | – | 0.10 Ω", "L-E at S1 | 0.11 to 0.12 Ω | – | –"]);
  });

  it("has one line for every point where nothing is drawn or read", () => {
    expect(planned("ring-rounds", `${cable}\nlength 24 m`, "ring").slice(0, 2)).toEqual([
      "L-N at every point | 0.089 Ω | – | –",
      "L-E at every point | 0.12 Ω | – | –",
    ]);
  });
});

// 643.8 since 2022 one test at its rating; before, no trip at half of it, and 40 ms at five times.
describe("an RCD", () => {
  const rcbo = (more: string) => `device BS EN 61009 B16 6 kA ${more}`;

  it("is tested at its rating, and its longest time of the latest day counts", () => {
    const live =
      "live 2026-03-05 {\nrcd 30 mA 1x 20 ms\nrcd 30 mA 1x 28 ms\nrcd 30 mA 1x 24 ms\n}\nlive 2025-03-05 {\nrcd 30 mA 1x 35 ms\n}";
    expect(planned("rcd", `${rcbo("30 mA type A")}\n${live}`)).toEqual([
      "30 mA type A BS EN 61009 at 1 × IΔn | – | at most 300 ms | 28 ms",
      "Test button, 30 mA type A BS EN 61009 | – | – | –",
    ]);
  });

  // An RCD that tripped at one half cycle and not at the other protects nobody on the other.
  it("that did not trip once that day has failed, whichever line stands first", () => {
    const recorded = (lines: string, standard = "BS 7671:2018+A2:2022") =>
      planned("rcd", `${rcbo("30 mA type A")}\nlive 2026-03-05 {\n${lines}\n}`, "radial", { standard })[0];
    const [tripped, held] = ["rcd 30 mA 1x 24 ms from-0", "rcd 30 mA 1x no-trip from-180"];
    expect(recorded(`${tripped}\n${held}`)).toMatch(/no-trip$/);
    expect(recorded(`${held}\n${tripped}`)).toMatch(/no-trip$/);
    expect(recorded(`rcd 30 mA 1x >300 ms from-0\n${held}`)).toMatch(/no-trip$/);
    expect(recorded(`rcd 30 mA 1x LIM "No access" from-180\n${tripped}`)).toMatch(/24 ms$/);
  });

  // At half its rating it is to hold: there the time is what fails.
  it("that tripped at half of it once that day has failed", () => {
    const [held, tripped] = ["rcd 30 mA 0.5x no-trip from-0", "rcd 30 mA 0.5x 180 ms from-180"];
    for (const lines of [`${held}\n${tripped}`, `${tripped}\n${held}`])
      expect(
        planned("rcd", `${rcbo("30 mA type A")}\nlive 2026-03-05 {\n${lines}\n}`, "radial", {
          standard: "BS 7671:2018",
        })[0],
      ).toMatch(/180 ms$/);
  });

  it("was tested at half and five times as well, where persons rely on it", () => {
    expect(planned("rcd", rcbo("30 mA type A"), "radial", { standard: "BS 7671:2018" })).toEqual([
      "30 mA type A BS EN 61009 at ½ × IΔn | – | no trip within 1 s | –",
      "30 mA type A BS EN 61009 at 1 × IΔn | – | at most 300 ms | –",
      "30 mA type A BS EN 61009 at 5 × IΔn | – | at most 40 ms | –",
      "Test button, 30 mA type A BS EN 61009 | – | – | –",
    ]);
    expect(planned("rcd", rcbo("100 mA type A"), "radial", { standard: "BS 7671:2018" })).toHaveLength(2);
  });

  it("of an edition that is not known is tested at its rating all the same", () => {
    expect(planned("rcd", rcbo("30 mA type A"), "radial", { standard: "BS 7671:1955" })[0]).toBe(
      "30 mA type A BS EN 61009 at 1 × IΔn | – | – | –",
    );
  });

  // BS EN 61008: half of IΔn to IΔn with a.c.; 0.35 to 1.4 times it with pulsating d.c.
  it("may be tested by waveforms, as its type allows", () => {
    const of = (type: string) => {
      const study = studied(rcbo(`30 mA type ${type}`));
      const [rcd] = study.rcds;
      return rcd ? testsByWaveform(rcd, study.context.edition).map(({ name, text }) => `${name}: ${text}`) : [];
    };
    expect(of("AC").slice(-1)).toEqual(["rising, with a.c.: trips between 15 mA and 30 mA"]);
    expect(of("A").slice(-2)).toEqual([
      "rising, with a.c.: trips between 15 mA and 30 mA",
      "rising, with pulsating d.c.: trips between 10.5 mA and 42 mA",
    ]);
    expect(of("A")[1]).toBe("with a.c. at 1 × IΔn: at most 300 ms; the longer of both half cycles counts");
    expect(of("A")[2]).toMatch(/^with a\.c\. at 5 × IΔn: at most 40 ms$/);
  });
});

it("what is dead is tested dead, and what is live live", () => {
  const study = studied(`device BS EN 61009 B16 6 kA 30 mA type A\n${cable}\nlength 20 m`);
  expect(new Set(planDead(study).map(({ live }) => live))).toEqual(new Set([false]));
  expect(new Set(planLive(study).map(({ live }) => live))).toEqual(new Set([true]));
  const ring = studied(`${cable}\nrun A 8 m S1 8 m S2 8 m A`, "ring");
  expect(new Set(planDead(ring).map(({ live }) => live))).toEqual(new Set([false]));
});

describe("polarity", () => {
  const read = (lines: string) => planned("polarity", `${drawn}\ndead 2026-03-04 {\n${lines}\n}`);
  const at = (point: string, polarity: string) => `at ${point} L-E 0.2 Ω${polarity}`;
  it("is recorded once every point states it, and a point that is wrong speaks for the circuit", () => {
    const name = "Polarity at every point | – | – |";
    expect(read([at("S1", " polarity ok"), at("S2", " polarity ok")].join("\n"))).toEqual([`${name} ok`]);
    expect(read([at("S1", " polarity ok"), at("S2", " polarity wrong")].join("\n"))).toEqual([`${name} wrong`]);
    expect(read([at("S1", " polarity ok"), at("S2", "")].join("\n"))).toEqual([`${name} –`]);
    expect(read([at("S1", " polarity wrong"), "polarity ok"].join("\n"))).toEqual([`${name} ok`]);
  });
});
