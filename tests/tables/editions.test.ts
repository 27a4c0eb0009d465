import { describe, expect, it } from "vitest";
import { editionOf, editions } from "../../server/tables/editions.ts";

describe("editions", () => {
  it.each([
    ["BS7671:2018 +A2:2022", "BS 7671:2018+A2:2022"],
    ["bs 7671 : 2018 + A2 : 2022", "BS 7671:2018+A2:2022"],
    ["BS 7671:2018+A3:2024", "BS 7671:2018+A2:2022+A3:2024"],
    ["BS 7671:2018+A3:2024+A2:2022", "BS 7671:2018+A2:2022+A3:2024"],
    ["BS 7671:2018, A1:2020", "BS 7671:2018+A1:2020"],
    ["BS 7671:2008+A3:2015", "BS 7671:2008+A3:2015"],
    ["BS 7671:2018+A4:2026", "BS 7671:2018+A4:2026"],
  ])("%s is read as %s", (written, id) => {
    expect(editionOf(written)?.id).toBe(id);
  });

  it.each(["", "BS 7671", "BS 7671:2018+A9:2040", "IEC 60364"])("%j names none", (written) => {
    expect(editionOf(written)).toBeUndefined();
  });

  it("stand in order of date, each found by its own name", () => {
    const dates = editions.map(({ from }) => from);
    expect(dates).toEqual(dates.toSorted());
    for (const edition of editions) expect(editionOf(edition.id)).toBe(edition);
  });

  it("have one in force, which says whose numbers it takes", () => {
    const [current, ...others] = editions.filter(({ inForce }) => inForce);
    expect([current, others]).toEqual([editions.at(-1), []]);
    expect(current?.unseen).toMatch(/no public page/i);
    expect(editionOf(current?.takesNumbersFrom ?? "")?.cmin.value).toBe(current?.cmin.value);
  });

  // Schneider Electric FAQ FA175048: Cmin 0.95 came with Amendment 3 of 2015; before it tables were U0/Ia.
  it("apply Cmin from 2015", () => {
    for (const { from, cmin } of editions) expect(cmin.value).toBe(from < "2015-07-01" ? 1 : 0.95);
  });

  // NICEIC, 18th Edition changes, part 4: 0.4 s to 63 A with sockets, 32 A fixed; sockets 32 A; lighting in dwellings.
  it("widen socket rules and dwelling lighting in 2018", () => {
    for (const edition of editions.filter(({ from }) => from >= "2019")) {
      expect(edition).toMatchObject({ socketDisconnectionScope: 63, fixedDisconnectionScope: 32, socketRcdUpTo: 32 });
      expect(edition.lightingRcdInDwellings).toBe(true);
    }
    expect(editionOf("BS 7671:2008+A3:2015")).toMatchObject({ socketDisconnectionScope: 32, socketRcdUpTo: 20 });
  });

  // IET Wiring Matters 91, July 2022: one a.c. test at IΔn; type AC restricted by 531.3.3.
  it("simplify the RCD test and restrict type AC in 2022", () => {
    for (const { from, rcdTest, typeAcRestricted } of editions) {
      expect(rcdTest).toBe(from < "2022" ? "half-one-five" : "single");
      expect(typeAcRestricted).toBe(from >= "2022");
    }
  });

  // Trade-body note on Amendment 3: 530.3.201, free supplement of 31 July 2024.
  it("ask for bidirectional devices from Amendment 3", () => {
    for (const { from, bidirectional } of editions) expect(bidirectional).toBe(from >= "2024-07-31");
  });

  /**
   * A line for each edition: Cmin, the ratings that must disconnect in the shorter time with sockets and without, sockets
   * that need an RCD, least insulation in MΩ, and the rules it has, from the pages named above and those beside its rows.
   */
  it("say each what they brought, and keep what those before them had", () => {
    const rules = [
      "lightingRcdInDwellings",
      "publicLightingRcd",
      "socketsByAssessment",
      "nonCombustibleUnits",
      "concealedAlways",
      "typeAcRestricted",
      "leakageShare",
      "switchOverload",
      "bidirectional",
      "investigationFails",
      "inForce",
    ] as const;
    const lines = editions.map((one, at) => {
      const before = editions[at - 1];
      const changed = rules.filter((rule) => one[rule] !== (before?.[rule] ?? false));
      const { cmin, socketDisconnectionScope, fixedDisconnectionScope, socketRcdUpTo, insulationMinimum } = one;
      const figures = [cmin.value, socketDisconnectionScope, fixedDisconnectionScope, socketRcdUpTo];
      return [
        one.id.replace("BS 7671:", ""),
        ...figures,
        insulationMinimum.value / 1e6,
        one.rcdTest,
        one.afdd,
        one.spd,
        ...changed.map((rule) => `${one[rule] ? "+" : "-"}${rule}`),
      ].join(" ");
    });
    expect(lines).toEqual([
      "2001 1 Infinity 0 0 0.5 half-one-five none none +investigationFails",
      "2008 1 32 32 20 1 half-one-five none risk-assessment",
      "2008+A1:2011 1 32 32 20 1 half-one-five none risk-assessment",
      "2008+A3:2015 0.95 32 32 20 1 half-one-five none risk-assessment +nonCombustibleUnits +concealedAlways",
      "2018 0.95 63 32 32 1 half-one-five recommended risk-assessment +lightingRcdInDwellings +publicLightingRcd +socketsByAssessment +leakageShare +switchOverload",
      "2018+A1:2020 0.95 63 32 32 1 half-one-five recommended risk-assessment",
      "2018+A2:2022 0.95 63 32 32 1 single required-in-listed-premises consequence +typeAcRestricted",
      "2018+A2:2022+A3:2024 0.95 63 32 32 1 single required-in-listed-premises consequence +bidirectional",
      "2018+A4:2026 0.95 63 32 32 1 single required-in-listed-premises consequence -investigationFails +inForce",
    ]);
  });
});
