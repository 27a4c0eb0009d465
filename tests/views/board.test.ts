import { describe, expect, test } from "vitest";
import { example, look } from "./looking.ts";

const hall = example("copper-lane/hall-faulty.ways");

async function rowsOf(text: string, board?: string) {
  const view = await look(text, "board", board);
  if (view.kind !== "board") throw new Error("This is no board.");
  return view;
}

describe("a board as rows", () => {
  test("each way stands with what it is, in order, and with its line", async () => {
    const { rows, title } = await rowsOf(hall);
    expect(title).toBe("A Hall board");
    expect(rows.map(({ id }) => id)).toEqual(["1", "2", "3", "4", "5", "6", "7"]);
    const [boiler] = rows;
    expect(boiler).toMatchObject({ device: "C32", cable: "6/2.5 mm² singles, 62 m", title: "Kitchen boiler" });
    expect(hall.split("\n")[boiler?.mark.line ?? -1]).toContain('way 1 radial "Kitchen boiler"');
  });

  test("the least margin is that of the reading nearest to its limit", async () => {
    const { rows } = await rowsOf(hall);
    // By hand: Zs cold may be 0.8 × 0.68 Ω = 0.54 Ω (Table 41.3, C32: 230 × 0.95 / 320 = 0.68 Ω); 0.22 Ω of it is the
    // board's, so R1+R2 may be 0.32 Ω, and 0.67 Ω is 109 % over. Zs 0.89 Ω is 65 % over.
    expect(rows[0]?.least).toMatchObject({ name: "R1+R2", standing: "beyond", left: "110 % over" });
    const Zs = rows[0]?.readings.find(({ name }) => name === "Zs");
    expect(Zs?.gauge).toMatchObject({ standing: "beyond", left: "65 % over" });
    expect(Zs?.gauge?.used).toBeCloseTo(0.89 / 0.54, 1);
    // Insulation of 0.6 MΩ where 1 MΩ is the least (Table 64).
    expect(rows[1]?.least).toMatchObject({ name: "L-N", standing: "beyond" });
    expect(rows[1]?.least?.used).toBeCloseTo(1 / 0.6, 6);
  });

  test("what failed, what is missing and what nobody needs to look at can be told apart", async () => {
    const { rows } = await rowsOf(hall);
    expect(rows[4]?.readings.find(({ name }) => name === "button")).toMatchObject({ text: "failed", failed: true });
    expect(rows[5]?.missing).toContain("Zs");
    expect(rows[6]).toMatchObject({ spare: true, missing: [], findings: [], readings: [] });
  });

  test("a design has no missing tests, and its margins are the calculated ones", async () => {
    const design = hall.replace(/stage +tested/, "stage design").replace(/\n {6}(dead|live) [^}]*\}/g, "");
    const { rows } = await rowsOf(design);
    expect(rows[0]?.missing).toEqual([]);
    expect(rows[0]?.least).toMatchObject({ calculated: true });
    expect(["Zs hot", "drop"]).toContain(rows[0]?.least?.name);
  });

  test("a loop that is too high for any device of its kind is the least margin, read or calculated", async () => {
    const file = (rest: string) => `wayfile 1
installation "Works" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    source       private
    Ze           0.04 Ω
    Ipf          5.8 kA
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Plant" {
${rest}
    }
  }
}`;
    const least = async (rest: string) => (await rowsOf(file(rest))).rows[0]?.least;
    const cable = (length: number) =>
      `device BS 88-2 315 A\ncable armoured 90 °C line 120 mm² cpc-by armour cores 4\nroute clipped method C\nlength ${length} m\nload 10 A`;
    expect(await least(cable(400))).toMatchObject({ name: "Zs hot", standing: "beyond", calculated: true });
    expect(await least(cable(40))).toMatchObject({ name: "drop", standing: "within" });
    const read = (Zs: string) => `device BS 88-3 45 A\nserves cooker sockets\nlive 2026-03-05 {\nZs ${Zs}\n}`;
    expect(await least(read("1.04 Ω"))).toMatchObject({ name: "Zs", standing: "beyond", calculated: false });
    expect(await least(read("0.48 Ω"))).toBeUndefined();
  });

  test("two ways of one number are both there", async () => {
    const twice = hall.replace("way 2 radial", "way 1 radial");
    const { rows } = await rowsOf(twice);
    expect(rows.slice(0, 2).map(({ key, id }) => [key, id])).toEqual([
      ["1", "1"],
      ["1#2", "1"],
    ]);
  });

  test("the findings of a way are those of the checks, in its row", async () => {
    const { rows } = await rowsOf(hall);
    expect(rows[0]?.findings.map(({ check }) => check)).toContain("loop/zs-over-limit");
    for (const { findings, mark } of rows)
      for (const found of findings) expect(found.mark.line).toBeGreaterThanOrEqual(mark.line);
  });
});
