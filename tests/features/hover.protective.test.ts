import { describe, expect, it } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { atCursor } from "../helpers/cursor.ts";

async function shown(cable: string, line = "", supply = "earthing TN-S"): Promise<string> {
  const sample = `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    ${supply}
    Ze 0.30 Ω
    tails 25 mm²
  }
  board A "Board" {
    fed-from supply
    ${line}
    way 1 radial "Sump pump" {
      device  BS EN 60898 C16 10 kA
      cable   ${cable}
      length  20 m
      serves  motor
      place   bathroom
    }
  }
}
`;
  const { snapshot, cursor } = await atCursor(sample);
  return hover(snapshot, cursor)?.markdown ?? "nothing";
}

describe("hovers of protective conductors", () => {
  it("tell the armour's resistance and section", async () => {
    const text = await shown("armou┆red 90 °C line 2.5 mm² cpc-by armour cores 2");
    expect(text).toContain("- protective conductor: steel wire armour, 8.8 mΩ/m at 20 °C");
    expect(text).toContain("(by the table); the armour has 17 mm²");
    expect(text).toContain("S = k1 / k2 × S of Table 54.7 = 143 / 46 × 2.5 mm² = 7.77 mm²");
  });

  it("tell both where a core lies beside it", async () => {
    const text = await shown("armou┆red 90 °C line 2.5 mm² cpc 2.5 mm² cpc-by armour cores 2");
    expect(text).toContain("- protective conductor: 2.5 mm² beside steel wire armour");
    expect(text).toContain("r of core and armour side by side");
  });

  it("say what a conduit must have, and that it is not known what it has", async () => {
    const text = await shown("sing┆les line 4 mm² cpc-by conduit");
    expect(text).toContain("- protective conductor: not calculated, the protective conductor is the steel conduit");
    expect(text).toContain("- steel conduit, at least: 9.79 mm² (by the table)");
  });

  it("say nothing of a protective conductor that is not there", async () => {
    const text = await shown("sing┆les line 4 mm² cpc-by none");
    expect(text).toContain("4 mm²");
    expect(text).not.toContain("not calculated, the protective");
  });

  it("tell what supplementary bonding may read", async () => {
    const cable = "multicore line 4 mm² cpc 4 mm²";
    const text = await shown(cable, "supplementary-bon┆ding bathroom 2.5 mm² continuity 0.10 Ω");
    expect(text).toContain("- at least: 4 mm², which this is not");
    expect(text).toContain("R at most, 50 V / Ia: 0.31 Ω");
    const unknown = await shown(cable, "supplementary-bon┆ding pool 4 mm² continuity 0.10 Ω");
    expect(unknown).toContain("- R at most: not calculated, no circuit of this board says");
  });

  it("hold the earthing conductor against the ground as well as against the table", async () => {
    const of = (conductor: string) =>
      shown("singles line 4 mm²", "", `earthing TN-S\n    earthing-con┆ductor ${conductor}`);
    expect(await of("10 mm²")).toContain("- at least: 16 mm², which this is not");
    expect(await of("16 mm² buried")).toContain("- at least: 25 mm², which this is not");
    expect(await of("16 mm² buried protected both")).toContain("- at least: 16 mm², which this is");
  });
});
