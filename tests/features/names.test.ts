import { describe, expect, it } from "vitest";
import { links } from "../../server/features/links.ts";
import { definitions, nameAt, occurrences, spotOf } from "../../server/features/names.ts";
import { rename } from "../../server/features/rename.ts";
import type { Spot } from "../../server/rules/frame/rule.ts";
import { Positions } from "../../server/syntax/document.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import { fileOfSegment, type Snapshot } from "../../server/workspace/workspace.ts";
import { atCursor, loftWith, openSample } from "../helpers/cursor.ts";

/** Lines with the spots underlined, and their file where it is another. */
function picture(snapshot: Snapshot, spots: readonly Spot[]): string {
  return spots
    .map((spot) => {
      const file = fileOfSegment(snapshot, spot.segment);
      if (!file) return "nowhere";
      const { line } = new Positions(file.document).place(spot.segment, spot.start);
      const { text } = spot.segment;
      const start = text.lastIndexOf("\n", spot.start) + 1;
      const shown = text.slice(start).split("\n")[0] ?? "";
      const other = file === snapshot.file ? "" : ` of ${file.path.split("/").at(-1)}`;
      const marks = `${" ".repeat(spot.start - start)}${"▔".repeat(spot.end - spot.start)}`;
      return `${shown}\n${marks} line ${line + 1}${other}`;
    })
    .join("\n");
}

async function defined(sample: string, others = {}): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample, others);
  const named = nameAt(snapshot, cursor);
  return named ? picture(snapshot, definitions(snapshot, named).map(spotOf)) : "no name";
}

async function used(sample: string, others = {}): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample, others);
  const named = nameAt(snapshot, cursor);
  return named ? picture(snapshot, occurrences(snapshot, named).map(spotOf)) : "no name";
}

describe("names", () => {
  it("go to where they are defined", async () => {
    expect(await defined(loftWith("behind  ea┆st"))).toMatchInlineSnapshot(`
      "    rcd east     BS EN 61008 63 A 30 mA type A
              ▔▔▔▔ line 21"
    `);
    expect(await defined(loftWith("┆at S5       L-N").replace("┆at S5", "at ┆S5"))).toMatchInlineSnapshot(`
      "      run     S3 4 m S5
                           ▔▔ line 31"
    `);
    expect(await defined(loftWith("dead 2026-03-04 with ┆M1 {"))).toMatchInlineSnapshot(`
      "instrument M1 "Multifunction tester" { due 2027-01-01 }
                 ▔▔ line 2"
    `);
  });

  it("go to a file that is used", async () => {
    const sample =
      'wayfile 1\nuse "shared/meters.ways"\ninstallation "A" {\n  supply {\n    measured 2026-03-05 with M┆7\n  }\n}\n';
    const others = { "shared/meters.ways": 'wayfile 1\ninstrument M7 "Loop tester" { due 2027-01-01 }\n' };
    expect(await defined(sample, others)).toMatchInlineSnapshot(`
      "instrument M7 "Loop tester" { due 2027-01-01 }
                 ▔▔ line 2 of meters.ways"
    `);
    expect(await used(sample, others)).toMatchInlineSnapshot(`
      "    measured 2026-03-05 with M7
                                   ▔▔ line 5
      instrument M7 "Loop tester" { due 2027-01-01 }
                 ▔▔ line 2 of meters.ways"
    `);
  });

  it("are found wherever they are used, a board's at the ends of its runs too", async () => {
    expect(await used(loftWith("┆board A").replace("┆board A", "board ┆A"))).toMatchInlineSnapshot(`
      "  board A "Loft board" {
              ▔ line 18
            run     A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
                    ▔ line 30
            run     A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
                                                       ▔ line 30"
    `);
    expect(await used(loftWith("run     S┆3 4 m S5"))).toMatchInlineSnapshot(`
      "      run     A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
                                        ▔▔ line 30
            run     S3 4 m S5
                    ▔▔ line 31"
    `);
  });

  it("are renamed together, or not at all", async () => {
    const { snapshot, cursor } = await atCursor(loftWith("rcd ea┆st     BS EN 61008"));
    const renamed = rename(snapshot, cursor, "west");
    expect("spots" in renamed && picture(snapshot, renamed.spots)).toMatchInlineSnapshot(`
      "    rcd east     BS EN 61008 63 A 30 mA type A
              ▔▔▔▔ line 21
            behind  east
                    ▔▔▔▔ line 27"
    `);
    expect(rename(snapshot, cursor, "two words")).toHaveProperty("refused");
    expect(rename(snapshot, cursor, "east")).toHaveProperty("refused");
    expect(rename(snapshot, cursor, "LIM")).toHaveProperty("refused");
  });

  it("link what is used to its file", async () => {
    const { snapshot } = await openSample('wayfile 1\nuse "../a b/c#d.ways"\nuse "./x\\\\y.ways"\n');
    expect(links(snapshot, resolveUri).map(({ path }) => path)).toEqual([
      "file:///a%20b/c%23d.ways",
      "file:///schedules/x/y.ways",
    ]);
  });
});
