import { describe, expect, it } from "vitest";
import { tables } from "../../server/tables/index.ts";
import type { Standing } from "../../server/tables/source.ts";

/** Every number says where it comes from: checked for all tables at once, so that a new one cannot forget. */

const standings: readonly Standing[] = ["published", "computed", "practice", "memory"];

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

  it("lists the pages where published cells were seen", () => {
    if (standingsIn(table).includes("published")) {
      expect(table.seen.length + Number(/BS EN 60228|Table 41.5/.test(table.ref))).toBeGreaterThan(0);
    } else {
      expect(standingsIn(table)).not.toContain("published");
    }
  });

  it("repeats no row", () => {
    const rows = table.rows.map(({ facts }) => JSON.stringify(facts));
    expect(new Set(rows).size).toBe(rows.length);
  });
});

describe("the tables together", () => {
  it("have names of their own", () => {
    const ids = tables.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  // A row that loses this standing, or comes with it, is to be noticed: the number is changed by hand.
  it("keep what is only remembered marked as such", () => {
    const ours = [
      "standard-ratings",
      "ir-71A",
      "single-diameters",
      "enclosure-walls",
      "swa-area",
      "protective-currents",
    ];
    const rows = tables
      .filter(({ id }) => !ours.includes(id) && !id.startsWith("place-"))
      .flatMap((table) => table.rows);
    expect(rows.filter(({ standing }) => standing === "memory")).toHaveLength(102);
  });
});
