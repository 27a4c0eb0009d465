/**
 * The mistakes a schedule can show, each found by the check that should and on the line that has it. Below them what is
 * sound though it looks odd, and what no schedule can show.
 */
import { describe, expect, it } from "vitest";
import { pageOf } from "../../server/rules/frame/catalogue.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";
import { mistakes, notVisible } from "./mistakes.table.ts";

interface Found {
  readonly check: string;
  readonly line: string;
}

function found(lines: string, setting: Setting): Found[] {
  const { text } = inSetting(lines, setting);
  const written = text.split("\n");
  return findingsOf(text).map(({ check, line }) => ({ check, line: written[line - 1]?.trim() ?? "" }));
}

describe("mistakes that are found", () => {
  it.each(mistakes.map((mistake) => [mistake.what, mistake] as const))("%s", (_, { finds, lines, setting }) => {
    const all = found(lines, setting);
    expect(Object.keys(finds).length).toBeGreaterThan(0);
    for (const [check, line] of Object.entries(finds)) expect(all).toContainEqual({ check, line });
  });

  it("each name their own, and checks that exist", () => {
    expect(new Set(mistakes.map(({ what }) => what)).size).toBe(mistakes.length);
    const ids = new Set(mistakes.flatMap(({ finds }) => Object.keys(finds)));
    expect([...ids].filter((id) => !pageOf(id))).toEqual([]);
    expect(mistakes.filter(({ what }) => what in notVisible)).toEqual([]);
  });
});

const twin = "device BS EN 61009 B16 6 kA 30 mA type A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves sockets";
const way = (body: string, kind = "radial"): string => `way 1 ${kind} "Bench" {\n${twin}\n${body}\n}`;

type Row = readonly [what: string, lines: string, family: RegExp, setting: Setting];
const installed: Setting = { stage: "installed" };
const tested: Setting = { stage: "tested" };

/** Looks wrong to a rule of thumb, and is right. */
const sound: readonly Row[] = [
  [
    "a long bonding conductor that reads what its length gives",
    way(""),
    /^protective\//,
    { supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA\nbonding water 10 mm² length 43 m continuity 0.08 Ω" },
  ],
  [
    "line to earth that climbs to the middle of a 4.0/1.5 mm² ring",
    `way 1 ring "Bench" {\ncable flat-twin line 4 mm² cpc 1.5 mm²\nrun A 6 m S1 6 m S2 7 m S3 8 m S4 9 m A\ndead 2026-03-04 {\nends r1 0.17 Ω rn 0.17 Ω r2 0.44 Ω\nat S1 L-N 0.08 Ω L-E 0.13 Ω\nat S2 L-N 0.08 Ω L-E 0.15 Ω\nat S3 L-N 0.08 Ω L-E 0.15 Ω\nat S4 L-N 0.08 Ω L-E 0.14 Ω\nR1+R2 0.15 Ω\n}\n}`,
    /^ring\//,
    installed,
  ],
  [
    "insulation off the end of the scale",
    way("dead 2026-03-04 {\ninsulation 500 V L-N >500 MΩ L-E >500 MΩ N-E >500 MΩ\n}"),
    /^insulation\//,
    installed,
  ],
  [
    "no test at five times the rating on a record to the 2022 text",
    way("live 2026-03-05 {\nZs 0.60 Ω\nrcd 30 mA 1x 24 ms\ntest-button ok\n}"),
    /^rcd\/t/,
    tested,
  ],
  [
    "a warm reading with its temperature",
    way("length 30 m\ndead 2026-03-04 {\ntemperature 35 °C\nR1+R2 0.62 Ω\n}"),
    /^continuity\//,
    installed,
  ],
  [
    "R2/R1 of 2.67 in 4.0/1.5 mm²",
    'way 1 feeder "Annexe" {\ncable flat-twin line 4 mm² cpc 1.5 mm²\ndead 2026-03-04 {\nR1+R2 0.67 Ω\nR2 0.49 Ω\n}\n}',
    /r2-ratio$/,
    installed,
  ],
];

describe("sound, though it looks odd", () => {
  it.each(sound)("%s", (_, lines, family, setting) => {
    expect(found(lines, setting).filter(({ check }) => family.test(check) || check.startsWith("language/"))).toEqual(
      [],
    );
  });
});
