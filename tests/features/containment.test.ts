import { describe, expect, it } from "vitest";
import { complete } from "../../server/features/completion.ts";
import { hover } from "../../server/features/hover.ts";
import { definitions, nameAt, occurrences } from "../../server/features/names.ts";
import { rename } from "../../server/features/rename.ts";
import { atCursor } from "../helpers/cursor.ts";

/** Two boards, each with a conduit of the same name, and a trunking that both use. `┆` is put before the nth of a text. */
const mill = `wayfile 1

installation "Mill" {
  standard   BS 7671:2018+A2:2022
  stage      design
  containment T1  trunking 50 mm by 50 mm  spare 10 %

  board A "Main" {
    fed-from supply
    containment C1 conduit 25 mm "To the saws" {
      section 6 m bends 2
      section 2 m
    }
    way 1 ring "Benches" {
      cable  singles 70 °C  line 2.5 mm²  cpc 2.5 mm²
      route  method B  in C1
      route  method B  in T1
    }
    way 2 radial "Saw" {
      cable  singles 70 °C  solid  line 1.5 mm²  cpc 1.5 mm²
      route  method B  in C1
    }
  }

  board B "Annexe" {
    fed-from A
    containment C1 conduit 20 mm length 2 m bends 0
    way 1 radial "Lathe" {
      cable  multicore 70 °C  line 2.5 mm²  cpc 1.5 mm²
      route  method B  in C1
      route  method B  in T1
    }
  }
}
`;

const cursorAt = (text: string, nth = 1): string => {
  let at = -1;
  for (let count = 0; count < nth; count++) at = mill.indexOf(text, at + 1);
  if (at < 0) throw new Error(`The sample does not hold ${text}.`);
  return `${mill.slice(0, at)}┆${mill.slice(at)}`;
};

async function card(sample: string): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample);
  return (hover(snapshot, cursor)?.markdown ?? "nothing")
    .split("\n")
    .filter((line) => line.startsWith("- "))
    .join("\n");
}

describe("the card of a containment", () => {
  it("sums what is in it, says how full it is, and what still goes in", async () => {
    const shown = await card(cursorAt("containment C1"));
    // 6 × 30 + 3 × 22 = 246 against 333: 87 are left.
    expect(shown).toMatchInlineSnapshot(`
      "- way 1 Benches: 6 × 2.5 mm²
      - way 2 Saw: 3 × 1.5 mm² solid
      - full: 74 % in the section of 6 m, 246 ≤ 333
      - section of 6 m, 2 bends: 74 %, 246 ≤ 333
      - section of 2 m, bends not stated: 42 %, 339 ≤ 800
      - still goes in: 5 × 1 mm², or 3 × 1.5 mm², or 2 × 2.5 mm², or 2 × 4 mm², or 1 × 6 mm²
      - least size that holds them: 25 mm
      - grouped: 2 circuits, factor 0.8
      - taken as: straight, where no bends are written"
    `);
  });

  it("is the same on the name in a route", async () => {
    expect(await card(cursorAt("C1", 2))).toBe(await card(cursorAt("containment C1")));
    expect(await card(cursorAt("C1", 2))).toContain("full: 74 %");
  });

  it("counts the ways of every board, and says what cannot be counted", async () => {
    expect(await card(cursorAt("T1", 3))).toMatchInlineSnapshot(`
      "- way 1 Benches: 6 × 2.5 mm²
      - way 1 Lathe: the room multicore cable takes goes by its diameter, which no table here gives
      - full: at least 8 %, 83.2 ≤ 1037
      - grouped: 2 circuits, factor 0.8
      - not calculated: way 1: the room multicore cable takes goes by its diameter, which no table here gives
      - taken as: stranded, where solid is not written"
    `);
  });
});

describe("the definition of a name", () => {
  const definition = async (sample: string) => {
    const { snapshot, cursor } = await atCursor(sample);
    return /```wayfile\n([^`]*)\n```/.exec(hover(snapshot, cursor)?.markdown ?? "")?.[1];
  };

  it("is its own lines and no others, as far to the left as they go", async () => {
    expect(await definition(cursorAt("C1", 5))).toBe("containment C1 conduit 20 mm length 2 m bends 0");
    expect(await definition(cursorAt("C1", 2))).toBe(
      'containment C1 conduit 25 mm "To the saws" {\n  section 6 m bends 2\n  section 2 m\n}',
    );
  });
});

describe("the picture of a containment", () => {
  const picture = async (sample: string, pictures: boolean) => {
    const { snapshot, cursor } = await atCursor(sample);
    return /!\[([^\]]*)\]\(data:image\/svg\+xml,([^)\s]*)\)/.exec(
      hover(snapshot, cursor, { pictures })?.markdown ?? "",
    );
  };

  it("stands on its line and on its name where the editor shows pictures, and nowhere else", async () => {
    const [, title, data = ""] = (await picture(cursorAt("containment C1"), true)) ?? [];
    expect(title).toBe("C1, 25 mm conduit, cut across");
    // 2 × 3 of the ring, 3 of the radial.
    expect(decodeURIComponent(data)).toContain("A/1 Benches, 6 cables");
    expect(decodeURIComponent(data)).toContain("A/2 Saw, 3 cables");
    expect((await picture(cursorAt("C1", 2), true))?.[1]).toBe("C1, 25 mm conduit, cut across");
    expect(await picture(cursorAt("C1", 2), false)).toBeNull();
    expect(await picture(cursorAt("way 2"), true)).toBeNull();
  });

  it("says which way it does not show", async () => {
    const [, , data = ""] = (await picture(cursorAt("containment T1"), true)) ?? [];
    expect(decodeURIComponent(data)).toContain("not drawn: way B/1");
  });
});

describe("the name of a containment", () => {
  const linesOf = async (sample: string) => {
    const { snapshot, cursor } = await atCursor(sample);
    const named = nameAt(snapshot, cursor);
    if (!named) throw new Error("No name is there.");
    const line = ({ fact, name }: typeof named) => fact.segment.text.slice(fact.start, name.end).replace(/\s+/g, " ");
    return { at: definitions(snapshot, named).map(line), used: occurrences(snapshot, named).map(line) };
  };

  it("means the board's own before any other", async () => {
    expect(await linesOf(cursorAt("C1", 3))).toEqual({
      at: ["containment C1"],
      used: ["containment C1", "route method B in C1", "route method B in C1"],
    });
    expect((await linesOf(cursorAt("C1", 5))).used).toEqual(["containment C1", "route method B in C1"]);
  });

  it("of the installation is used by every board", async () => {
    expect((await linesOf(cursorAt("T1", 2))).used).toEqual([
      "containment T1",
      "route method B in T1",
      "route method B in T1",
    ]);
  });

  it("is renamed with its uses, and not over another", async () => {
    const { snapshot, cursor } = await atCursor(cursorAt("C1", 2));
    const renamed = rename(snapshot, cursor, "saws");
    expect("spots" in renamed && renamed.spots.length).toBe(3);
    expect(rename(snapshot, cursor, "T1")).toEqual({ refused: "“T1” is taken already." });
  });

  it("is offered after in", async () => {
    const { snapshot, cursor } = await atCursor(mill.replace("in C1\n      route  method B  in T1", "in ┆"));
    const labels = complete(snapshot, cursor).map(({ label }) => label);
    expect(labels).toEqual(expect.arrayContaining(["C1", "T1"]));
    expect(labels.filter((label) => label === "C1")).toHaveLength(1);
  });
});
