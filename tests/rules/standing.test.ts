/** What was read on one day stands until the same is read again: not until anything else is, nor until it cannot be read. */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";

const of = (kind: "dead" | "live", check: string, first: string, later: string) =>
  find(
    check,
    `way 1 radial "Bench" {\ndevice BS EN 60898 B20 6 kA\nrcd BS EN 61008 63 A 30 mA type A\n${kind} 2026-03-04 {\n${first}\n}\n${kind} 2026-04-01 {\n${later}\n}\n}`,
    { stage: "tested", supply: "earthing TN-S\nZe 0.30 Ω" },
  );

const pairs = (LN: string, LE: string, NE: string) => `insulation 500 V L-N ${LN} MΩ L-E ${LE} MΩ N-E ${NE} MΩ`;

describe("a dangerous reading of an earlier day", () => {
  it.each([
    ["dead", "insulation/zero", pairs("0", "310", "320"), "insulation 500 V joined L-E 300 MΩ"],
    ["dead", "insulation/zero", pairs("300", "0", "320"), "insulation 500 V L-N 300 MΩ"],
    ["dead", "insulation/zero", pairs("300", "0", "320"), 'insulation 500 V LIM "The tenant was at work"'],
    ["dead", "insulation/below-minimum", pairs("0.2", "310", "320"), "insulation 500 V joined L-E 300 MΩ"],
    ["dead", "continuity/open", "R1+R2 >200 Ω", 'R1+R2 LIM "No access to the loft"'],
    ["live", "rcd/time-over-limit", "rcd 30 mA 1x no-trip", 'rcd 30 mA 1x LIM "The tenant was at work"'],
    ["live", "rcd/time-over-limit", "rcd 30 mA 1x 600 ms", "rcd 30 mA 5x 24 ms"],
    ["live", "live/function-failed", "function wrong", "Zs 0.61 Ω"],
    ["live", "live/voltage-outside", "voltage 263 V", "Zs 0.61 Ω"],
    ["live", "loop/point-over-limit", "at S1 Zs 2.6 Ω", "at S2 Zs 0.6 Ω"],
  ] as const)("%s, %s: %s stands after %s", (kind, check, first, later) => {
    expect(of(kind, check, first, later)).toHaveLength(1);
  });

  it.each([
    ["dead", "insulation/zero", pairs("300", "0", "320"), "insulation 500 V joined L-E 300 MΩ"],
    ["dead", "insulation/zero", pairs("0", "310", "320"), "insulation 500 V L-N 300 MΩ"],
    ["dead", "insulation/below-minimum", pairs("0.2", "310", "320"), pairs("200", "310", "320")],
    ["dead", "continuity/open", "R1+R2 >200 Ω", "R1+R2 0.41 Ω"],
    ["live", "rcd/time-over-limit", "rcd 30 mA 1x no-trip", "rcd 30 mA 1x 24 ms"],
    ["live", "live/function-failed", "function wrong", "function ok"],
    ["live", "live/voltage-outside", "voltage 263 V", "voltage 241 V"],
    ["live", "loop/point-over-limit", "at S1 Zs 2.6 Ω", "at S1 Zs 0.6 Ω"],
  ] as const)("%s, %s: %s is put right by %s", (kind, check, first, later) => {
    expect(of(kind, check, first, later)).toEqual([]);
  });

  it("says since when", () => {
    const [found] = of("dead", "insulation/zero", pairs("0", "310", "320"), "insulation 500 V joined L-E 300 MΩ");
    expect(found?.message).toContain("It was not read again after 2026-03-04.");
  });

  it("of Zs stands where the loop could not be read again", () => {
    const found = (later: string) =>
      find(
        "loop/zs-over-limit",
        `way 1 radial "Bench" {\ndevice BS EN 60898 B20 6 kA\nlive 2026-03-04 {\nZs 9.1 Ω\n}\nlive 2026-04-01 {\n${later}\n}\n}`,
        { stage: "tested", work: "existing" },
      );
    expect(found('Zs LIM "The room was locked"')).toHaveLength(1);
    expect(found("Zs 0.9 Ω")).toEqual([]);
  });
});
