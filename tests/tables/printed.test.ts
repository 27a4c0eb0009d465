import { describe, expect, it } from "vitest";
import { busbarAmbient } from "../../server/tables/busbar.ts";
import { usualRingLength } from "../../server/tables/dead-test-practice.ts";
import { groundAsTabulated } from "../../server/tables/ground.ts";
import { headingOf } from "../../server/tables/headings.ts";
import { tables } from "../../server/tables/index.ts";
import { arrangedAbove } from "../../server/tables/parallel.ts";
import { usualShare } from "../../server/tables/source.ts";
import { standardRatings } from "../../server/tables/standard-values.ts";
import { design } from "./design.table.ts";
import { limits } from "./limits.table.ts";
import { places } from "./places.table.ts";
import { practice, thresholds } from "./practice.table.ts";
import { kept, listed } from "./printed.ts";
import { sizes } from "./sizes.table.ts";

const lists = [...limits, ...design, ...sizes, ...places, ...practice];

describe("tables as they are printed", () => {
  it.each(lists.map(([table, columns, list]) => [table.id, columns, table, list] as const))(
    "%s: %s",
    (_, columns, table, list) => {
      expect(kept(table, columns)).toEqual(listed(list));
    },
  );

  it.each(thresholds)("thresholds: %s", (_, of, list) => {
    const written = Object.entries(of).map(([name, { value, unit }]) => `${name} ${value}${unit ? ` ${unit}` : ""}`);
    expect(written).toEqual(listed(list));
  });

  // IEC 60898-1 as an article has it, with 45 A as makers add it; BS 3871 for the older; BS 88-2 by a makers' list, and the fuses of a tester's manual.
  it("standard ratings", () => {
    const byFamily = Map.groupBy(standardRatings.rows, ({ facts }) => facts.family);
    const ratings = [...byFamily].map(
      ([family, rows]) => `${family}: ${kept({ ...standardRatings, rows }, "rating").join(" ")}`,
    );
    expect(ratings).toEqual([
      "breaker: 1C 2C 3M 4C 6C 10C 13C 16C 20C 25C 32C 40C 45P 50C 63C 80C 100C 125C",
      "legacy-breaker: 5M 6M 10M 15M 16M 20M 30M 32M 40M 45M 50M 63M 100M",
      "BS 88-2: 2C 4C 6C 10C 16C 20C 25C 32C 40C 50C 63C 80C 100C 125C 160C 200C 250C 315C 355C 400C 450C 500C 560C 630C 710C 800C 1000C 1250C",
      "BS 88-3: 5C 16C 20C 32C 45C 63C 80C 100C",
      "BS 3036: 5C 15C 20C 30C 45C 60C 100C",
      "BS 1361: 5C 15C 20C 30C 45C 60C 80C 100C",
      "BS 1362: 3C 13C",
    ]);
  });

  it("has a list for every column of figures", () => {
    const compared = new Set(
      lists.flatMap(([table, columns]) => columns.split(" ").map((column) => `${table.id} ${column}`)),
    );
    const missing = tables
      .filter((table) => table !== standardRatings)
      .flatMap(({ id, units, rows }) =>
        Object.keys(units)
          .filter((column) => rows.some(({ facts }) => typeof (facts as Record<string, unknown>)[column] === "number"))
          .map((column) => `${id} ${column}`),
      )
      .filter((name) => !compared.has(name));
    expect(missing).toEqual([]);
  });

  it("has a heading for every column", () => {
    const without = tables.flatMap(({ id, units }) =>
      Object.keys(units)
        .filter((column) => headingOf(id, column) === undefined)
        .map((column) => `${id} ${column}`),
    );
    expect(without).toEqual([]);
  });

  // IET On-Site Guide, Table 7.1; BS EN 61439-1, 7.1.1; 523.7 of BS 7671. All from memory.
  it("and figures that stand alone", () => {
    expect(usualRingLength).toMatchObject({ value: 106, csa: 2.5, source: { standing: "memory" } });
    expect(busbarAmbient).toMatchObject({ value: 35, source: { standing: "memory" } });
    // Table 4B3 and Table 4B4: what has a factor of 1.
    expect(groundAsTabulated).toEqual({ soil: 2.5, depth: 700 });
    expect(arrangedAbove).toMatchObject({ copper: { value: 50 }, aluminium: { value: 70 } });
  });

  // A share of 0 is for steps of a scale and rules, which are not a little off. What is wide has a reason beside its rows.
  it("says of few tables that memory is out by another share than the usual one", () => {
    const shares = tables.filter(({ share }) => share !== undefined).map(({ id, share }) => `${id} ${share}`);
    expect(shares.toSorted()).toEqual([
      "disc-scope 0",
      "factor-4B4 0.05",
      "place-bonding 0",
      "place-earths 0",
      "place-equipment 0",
      "place-rcds 0",
      "place-touch 0",
      "place-water 0",
      "place-zones 0",
      "reactance 0.33",
      "standard-ratings 0",
      "vd-4E4B 0.05",
      "zs-41.2 0.2",
      "zs-41.4 0.2",
    ]);
    expect(usualShare).toBe(0.1);
  });
});
