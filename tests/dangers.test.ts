import { describe, expect, it } from "vitest";
import { asGraveAs, dangers, gravest, leastOf, unknownGrades } from "./helpers/dangers.ts";
import { allIn } from "./helpers/fixing.ts";
import { generate } from "./helpers/generate.ts";
import { random } from "./helpers/random.ts";
import { findingsOf } from "./helpers/sample.ts";
import { sheetOf } from "./helpers/sheet.ts";

const seeds = Array.from({ length: 16 }, (_, index) => index + 1);

/** The kinds put into installations of fixed seeds: which were silent, told elsewhere or too light, and what was put in. */
function missed(): { missed: string[]; kinds: Set<string> } {
  const kinds = new Set<string>();
  const lost = seeds.flatMap((seed) => {
    const text = generate({ ways: 3 + (seed % 8), waysPerBoard: 12, seed: seed * 4177, mix: seed % 2 === 0 });
    const next = random(seed);
    return dangers.flatMap((danger) => {
      const { name, spoil } = danger;
      const spoilt = spoil(sheetOf(text), next);
      if (!spoilt || spoilt.text === text) return [];
      kinds.add(name);
      const grade = gravest(spoilt, findingsOf(spoilt.text));
      const least = leastOf(danger, spoilt);
      return grade && asGraveAs(grade, least) ? [] : [`${name}, seed ${seed}: ${grade ?? "nothing"} for ${least}`];
    });
  });
  return { missed: lost, kinds };
}

/** A danger nobody is told of is the worst a checker can do. */
describe("one danger put into a sound installation", () => {
  it("is found by its own check, where it was put in, as gravely as it is", () => {
    expect(unknownGrades()).toEqual([]);
    const { missed: lost, kinds } = missed();
    expect(lost).toEqual([]);
    expect(kinds.size).toBeGreaterThan(75);
  });
});

const shop = (supply: string, ways: string) => `wayfile 1
installation "Shop" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  premises  commercial
  supply {
    earthing  TN-S
    Ze        0.20 Ω
    Ipf       1.2 kA
    ${supply}
  }
  board A "Board" {
    fed-from   supply
    diversity  50 %
    Zdb        0.21 Ω
${ways}
  }
}`;

const over = (text: string) => allIn(text).find(({ check }) => check === "demand/over-cutout");

describe("what such dangers brought to light", () => {
  it("the published table is not taken on top of the diversity a board states", () => {
    const heaters = [1, 2, 3, 4]
      .map((id) => `    way ${id} radial "Oven" {\n      serves cooker\n      Ib 20 A\n    }`)
      .join("\n");
    // Half of 80 A; by the table as well it would be less than the cut-out.
    expect(over(shop("cutout BS 88-3 32 A", heaters))?.value).toEqual({ amount: 40, unit: "A" });
    expect(over(shop("cutout BS 88-3 40 A", heaters))).toBeUndefined();
  });

  const way = (length: number, Zs: number) => `    way 1 radial "Fan" {
      device  BS EN 60898 B16 6 kA
      cable   singles 70 °C line 2.5 mm² cpc 2.5 mm²
      length  ${length} m
      dead 2026-03-04 {
        R1+R2  0.44 Ω
      }
      live 2026-03-05 {
        Zs  ${Zs} Ω
      }
    }`;
  const against = (text: string) => allIn(text).find(({ check }) => check === "continuity/r1r2-against-length");

  it("a reading that Zs bears out is not to be rewritten after a length that slipped", () => {
    const found = against(shop("", way(300, 0.65)));
    expect(found?.message).toContain("Zs agrees with the reading");
    expect(found?.fixes).toEqual([]);
    expect(against(shop("", way(300, 4.6)))?.fixes).toHaveLength(1);
  });

  it("a larger device is not offered where the loop that was read would not open it", () => {
    const loaded = (Zs: number) =>
      allIn(
        // What is installed is replaced by no click: a larger one is proposed in a design alone.
        shop(
          "",
          way(30, Zs).replace("      length", "      route clipped method C\n      Ib 22 A\n      length"),
        ).replace("stage     tested", "stage     design"),
      ).find(({ check }) => check === "design/load-over-device");
    expect(loaded(0.65)?.fixes.map(({ title }) => title)).toEqual(["Make the device B25"]);
    expect(loaded(2.2)?.fixes).toEqual([]);
  });

  it("tails that bear what is drawn are asked about and no more", () => {
    const graver = (supply: string) =>
      allIn(shop(supply, way(30, 0.65))).find(({ check }) => check === "coordination/tails-below-cutout")?.severity;
    expect(graver("cutout BS 88-3 100 A\n    tails 6 mm²\n    demand 80 A")).toBe("error");
    expect(graver("cutout BS 88-3 100 A\n    tails 16 mm²\n    demand 60 A")).toBe("information");
    expect(graver("cutout BS 88-3 80 A\n    tails 16 mm²\n    demand 60 A")).toBeUndefined();
  });
});

describe("a fault current nobody noted at the origin", () => {
  const found = (stage: string, ipf: string) =>
    allIn(shop("", "").replace("tested", stage).replace("Ipf       1.2 kA", ipf)).filter(
      ({ check }) => check === "record/supply-incomplete",
    ).length;

  it("is asked for in a design and once the supply is on, not in between", () => {
    expect(found("design", "")).toBe(1);
    expect(found("tested", "")).toBe(1);
    expect(found("dead-tested", "")).toBe(0);
    expect(found("tested", "Ipf 1.2 kA")).toBe(0);
  });
});
