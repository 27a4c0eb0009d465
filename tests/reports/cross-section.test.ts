import { describe, expect, it } from "vitest";
import { containmentsOn } from "../../server/conduits/containment.ts";
import { layOf } from "../../server/conduits/lay.ts";
import { crossSection as drawn } from "../../server/drawings/cross-section.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { imageOf, pictureOf } from "../../server/reports/setting/picture.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { wellFormed } from "./well-formed.ts";

function studied(containment: string, ways: readonly string[]) {
  const blocks = ways.map((lines, index) => `way ${index + 1} radial "Load <${index + 1}> & more" {\n${lines}\n}`);
  const text = `wayfile 1\ninstallation "Mill" {\nsupply {\nphases three\n}\nboard A "Board" {\nfed-from supply\n${containment}\n${blocks.join("\n")}\n}\n}\n`;
  const [place] = installationsOf([fileOfText("sample.ways", text)])[0]?.boards ?? [];
  const [study] = place ? containmentsOn(place) : [];
  if (!study) throw new Error("There is no containment in the sample.");
  return study;
}

const three = "phase three\ncable singles line 4 mm² cpc 2.5 mm²\nroute in C1";
const single = "phase L2\ncable singles line 1.5 mm² cpc 1.0 mm²\nroute in C1";

const crossSection = (study: Parameters<typeof drawn>[0]) => {
  const drawing = drawn(study);
  return drawing && pictureOf(drawing);
};

describe("a containment cut across", () => {
  it("shows every core of every way, in the colours of the standard", () => {
    const study = studied("containment C1 conduit 25 mm length 2 m", [three, single]);
    const cores = layOf(study)?.cables.map(({ core, study: { way } }) => `${way.id} ${core}`) ?? [];
    expect(cores.toSorted()).toEqual(["1 L1", "1 L2", "1 L3", "1 cpc", "1 neutral", "2 cpc", "2 line", "2 neutral"]);
    const { svg: { text: svg } = { text: "" }, description } = crossSection(study) ?? {};
    for (const colour of ["L1, brown", "L2, black", "L3, grey", "neutral, blue", "cpc, green-and-yellow"])
      expect(svg).toContain(colour);
    // 4 × 58 + 43 and 2 × 31 + 22, of 800.
    expect(description).toContain("45 % of what the guide");
  });

  it("is drawn to scale: a cable is as thick as the table has it, and lies within the wall", () => {
    const study = studied("containment C1 trunking 50 mm by 25 mm", [three]);
    const lay = layOf(study);
    expect(lay?.cables.map(({ radius }) => radius * 2)).toEqual([4.6, 4.6, 4.6, 4.6, 4]);
    expect(lay?.enclosure).toEqual({ shape: "box", width: 47.6, depth: 22.6 });
    const svg = crossSection(study)?.svg.text ?? "";
    // 220 across 50 mm.
    expect(svg).toContain('r="10.12"');
    expect(svg).toContain('h44"');
  });

  it("says how many do not go in", () => {
    const study = studied("containment C1 conduit 16 mm length 2 m", [three, three, three]);
    const lay = layOf(study);
    expect((lay?.left ?? 0) + (lay?.cables.length ?? 0)).toBe(15);
    // Fifteen of 4.6 mm and less come to far more than the 8 to 9 that lie in the 13 mm within a conduit of 16.
    expect(lay?.left).toBeGreaterThan(5);
    expect(crossSection(study)?.description).toContain(`No place was found for ${lay?.left} more`);
  });

  it("is not drawn where nothing is known to be in it", () => {
    expect(crossSection(studied("containment C1 conduit 25 mm", []))).toBeUndefined();
    expect(crossSection(studied("containment C1 trunking 50 mm", [single]))).toBeUndefined();
    const sheathed = "cable flat-twin line 4 mm² cpc 1.5 mm²\nroute in C1";
    expect(crossSection(studied("containment C1 trunking 50 mm by 50 mm", [sheathed]))).toBeUndefined();
    const mixed = studied("containment C1 trunking 50 mm by 50 mm", [sheathed, single]);
    expect(crossSection(mixed)?.description).toContain("Not drawn: way A/1");
  });

  it("stands on paper of its own, tells what it is, and holds nothing that runs", () => {
    const drawing = crossSection(studied("containment C1 conduit 25 mm length 2 m", [three, single]));
    const svg = drawing?.svg.text ?? "";
    expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*><title>C1, 25 mm conduit, cut across<\/title><desc>[^<]+<\/desc>/);
    expect(svg).toContain('<rect width="100%" height="100%" fill="#ffffff">');
    expect(svg).not.toMatch(/script|href|\bon\w+=|style=|currentColor/i);
    expect(svg).toContain("Load &lt;1&gt; &amp; more");
    expect(() => wellFormed(svg)).not.toThrow();
    const image = drawing ? imageOf(drawing) : "";
    expect(image).toMatch(/^data:image\/svg\+xml,[\w%.~-]+$/);
    expect(decodeURIComponent(image.slice(image.indexOf(",") + 1))).toBe(svg);
  });
});
