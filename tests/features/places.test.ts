import { describe, expect, it } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { atCursor } from "../helpers/cursor.ts";

const farm = (place: string, way: string, supply = "TN-C-S") => `wayfile 1
installation "Farm" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing ${supply}
  }
  board A "Barn" {
    fed-from supply
    ${place}
    way 1 radial "Circuit" {
      ${way}
    }
  }
}`;

async function rows(sample: string): Promise<string[]> {
  const { snapshot, cursor } = await atCursor(sample);
  const lines = hover(snapshot, cursor)?.markdown.split("\n") ?? [];
  return lines.filter((line) => line.startsWith("- "));
}

describe("a place tells which rules it adds", () => {
  it("to a circuit as it stands", async () => {
    const way = "device BS EN 61009 C16 6 kA 30 mA type A\nserves sockets\npl┆ace caravan";
    expect(await rows(farm("", way))).toEqual([
      "- RCD: 30 mA or less, caravan",
      "- each socket: an RCD and an overcurrent device of its own",
      "- PME earth: not without an electrode of their own, written earthing TT",
      "- keeps out water: IPX4 or better",
    ]);
  });

  it("to a circuit in a zone", async () => {
    const way = "device BS EN 61009 B16 6 kA 30 mA type A\nserves sockets\npl┆ace bathroom zone 1 outside";
    expect(await rows(farm("", way))).toEqual([
      "- RCD: 30 mA or less, bathroom",
      "- sockets: 2.5 m or more from zone 1",
      "- keeps out water: IPX4 or better",
      "- supplementary bonding: required, unless the conditions for omitting it are met",
    ]);
  });

  it("to the circuits of a board", async () => {
    expect(await rows(farm("pl┆ace agricultural", "serves lighting"))).toEqual([
      "- RCD, sockets to 32 A: 30 mA or less",
      "- RCD, sockets: 100 mA or less",
      "- RCD, other circuits: 300 mA or less",
      "- RCD, distribution circuits: 300 mA or less",
      "- keeps out water: IPX4 or better",
      "- supplementary bonding: required",
    ]);
  });

  it("and nothing where it adds none", async () => {
    expect(await rows(farm("", "serves lighting\npl┆ace skilled-only"))).toEqual([]);
    expect(await rows(farm("pl┆ace", "serves lighting"))).toEqual([]);
  });
});
