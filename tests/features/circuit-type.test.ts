/** What an editor does with a circuit type: it is found, shown, renamed and offered where a way names it. */
import { describe, expect, it } from "vitest";
import { complete } from "../../server/features/completion.ts";
import { hover } from "../../server/features/hover.ts";
import { inlayHints } from "../../server/features/inlay.ts";
import { definitions, nameAt } from "../../server/features/names.ts";
import { rename } from "../../server/features/rename.ts";
import { atCursor, openSample } from "../helpers/cursor.ts";

const sample = `wayfile 1
circuit-type lights radial {
  device  BS EN 61009 B10 10 kA 30 mA type A
  cable   flat-twin  line 1.5 mm²  cpc 1 mm²
  route   clipped  method C
  serves  lighting
}
installation "Yard" {
  standard  BS 7671:2018+A2:2022
  supply {
    phases  three
  }
  board A {
    fed-from  supply
    way 1L2 as li┆ghts "Corridor" {
      length  31 m
    }
    way 2 as lights "Store"
  }
}
`;
const plain = sample.replace("┆", "");

describe("a circuit type", () => {
  it("is found from the way that names it", async () => {
    const { snapshot, cursor } = await atCursor(sample);
    const named = nameAt(snapshot, cursor);
    const [found] = named ? definitions(snapshot, named) : [];
    expect(found?.fact.word).toBe("circuit-type");
  });

  it("is shown with its lines", async () => {
    const { snapshot, cursor } = await atCursor(sample);
    expect(hover(snapshot, cursor)?.markdown).toContain("device  BS EN 61009 B10 10 kA 30 mA type A");
  });

  it("is renamed with its ways", async () => {
    const { snapshot, cursor } = await atCursor(sample);
    const result = rename(snapshot, cursor, "lamps");
    expect("spots" in result ? result.spots.length : result).toBe(3);
  });

  it("is told beside the way, and so is the line in its number", async () => {
    const { snapshot } = await openSample(plain);
    const texts = inlayHints(snapshot, "both", () => true).map(({ text }) => text);
    expect(texts).toContain("on L2; from lights: device, cable, route, serves");
    expect(texts).toContain("from lights: device, cable, route, serves");
  });

  it("is offered behind `as`", async () => {
    const { snapshot, cursor } = await atCursor(plain.replace('as lights "Store"', "as ┆"));
    expect(complete(snapshot, cursor).map(({ label }) => label)).toContain("lights");
  });
});
