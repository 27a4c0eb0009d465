import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { tables } from "../../server/tables/index.ts";
import type { Standing } from "../../server/tables/source.ts";

const pagesPattern = /\/\/ Quoted on these pages:\n((?: *\/\/ - .*\n)+)/g;
const idPattern = /\bid: "([^"]+)"/g;

/** Every number says where it comes from: checked for all tables at once, so that a new one cannot forget. */

const standings: readonly Standing[] = ["printed", "quoted", "computed", "practice", "memory"];

function standingsIn({ rows }: (typeof tables)[number]): Standing[] {
  return rows.flatMap(({ standing, cells }) => [standing, ...(Object.values(cells ?? {}) as Standing[])]);
}

describe.each(tables.map((table) => [table.id, table] as const))("%s", (_, table) => {
  it("names its source, its edition and when it applies", () => {
    for (const text of [table.title, table.ref, table.edition, table.applies]) expect(text.trim()).not.toBe("");
    expect(table.ref).toMatch(/\d{2,}|Guide|practice/);
  });

  it("has rows, each with a known standing and the same columns", () => {
    expect(table.rows.length).toBeGreaterThan(0);
    const columns = Object.keys(table.units).sort();
    for (const row of table.rows) expect(Object.keys(row.facts).sort()).toEqual(columns);
    for (const standing of standingsIn(table)) expect(standings).toContain(standing);
  });

  const quoted = standingsIn(table).includes("quoted") && !/BS EN 60228|Table 41.5/.test(table.ref);
  it.runIf(quoted)("says how many pages quote its values", () => {
    expect(table.quotedOn).toBeGreaterThan(0);
  });

  it("repeats no row", () => {
    const rows = table.rows.map(({ facts }) => JSON.stringify(facts));
    expect(new Set(rows).size).toBe(rows.length);
  });
});

describe("the tables together", () => {
  it("name each page they are quoted on beside the rows, in a comment that is not shipped", () => {
    const folder = new URL("../../server/tables/", import.meta.url);
    const listed = readdirSync(folder).flatMap((name) => {
      const text = readFileSync(new URL(name, folder), "utf8");
      return [...text.matchAll(pagesPattern)].map(({ index, 1: pages = "" }) => [
        [...text.slice(0, index).matchAll(idPattern)].at(-1)?.[1],
        pages.match(/\/\/ - /g)?.length,
      ]);
    });
    const stated = new Map(tables.map(({ id, quotedOn }) => [id, quotedOn]));
    expect(listed.length).toBeGreaterThan(50);
    expect(listed).toEqual(listed.map(([id]) => [id, stated.get(String(id))]));
  });

  it("have names of their own", () => {
    const ids = tables.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  // A row that loses this standing, or comes with it, is to be noticed: the number is changed by hand.
  it("keep what is only remembered marked as such", () => {
    const ours = [
      "citations",
      "standard-ratings",
      "ir-71A",
      "single-diameters",
      "enclosure-walls",
      "swa-area",
      "protective-currents",
      "inspection-items",
    ];
    const rows = tables
      .filter(({ id }) => !ours.includes(id) && !id.startsWith("place-"))
      .flatMap((table) => table.rows);
    expect(rows.filter(({ standing }) => standing === "memory")).toHaveLength(114);
  });
});
