/** At the limit itself, and one condition short: where a check must keep silent. */
import { expect, it } from "vitest";
import { find } from "../helpers/find.ts";

// 643.3.2: a board with an SPD may be tested at 250 V.
it.each([
  [250, 0],
  [500, 1],
])("a board with an SPD tested at %i V", (voltage, count) => {
  const text = `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Board" {
    fed-from supply
    spd fitted
    dead 2026-03-04 {
      insulation ${voltage} V L-E 42 MΩ joined
    }
  }
}
`;
  expect(find("insulation/spd-not-disconnected", text)).toHaveLength(count);
});

// 421.1.7 asks for AFDDs from A2:2022 on, of socket circuits to 32 A in the premises that it lists.
it.each([
  ["BS 7671:2018+A2:2022", "care-home", "B32", "serves sockets", 1],
  ["BS 7671:2018+A1:2020", "care-home", "B32", "serves sockets", 0],
  ["BS 7671:2018+A2:2022", "dwelling", "B32", "serves sockets", 0],
  ["BS 7671:2018+A2:2022", "care-home", "B40", "serves sockets", 0],
  ["BS 7671:2018+A2:2022", "care-home", "B32", "", 0],
  ["BS 7671:2018+A2:2022", "care-home", "B32", "serves sockets\nafdd BS EN 62606", 0],
])("an AFDD to %s, in a %s, behind %s, %j", (standard, premises, rating, lines, count) => {
  const text = `wayfile 1
installation "Sample" {
  standard ${standard}
  work new
  premises ${premises}
  board A "Board" {
    fed-from supply
    way 1 radial "Sockets" {
      device BS EN 61009 ${rating} 6 kA 30 mA type A
      ${lines}
    }
  }
}
`;
  expect(find("afdd/missing", text)).toHaveLength(count);
});

// 643.3.2: 1 MΩ. Where to look follows from which pairs are low, and a pair that was not read clears nothing.
it.each([
  ["N-E 0.40 MΩ", "find the damp or the damage"],
  ["L-E 310 MΩ N-E 0.40 MΩ", "Look for a neutral touching metal"],
  ["L-E 0.30 MΩ N-E 0.40 MΩ", "find the damp or the damage"],
  ["L-N 0.01 MΩ", "A lamp, a neon or a load may be connected"],
])("insulation %s: %s", (readings, advice) => {
  const way = `way 1 radial "Kiln" {\n  dead 2026-03-04 {\n    insulation 500 V ${readings}\n  }\n}`;
  const found = find("insulation/below-minimum", way).filter(({ message }) => !message.startsWith("L-E"));
  expect(found.map(({ message }) => message)).toEqual([expect.stringContaining(advice)]);
});
