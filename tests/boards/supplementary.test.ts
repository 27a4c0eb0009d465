/** Which circuit of a place decides what its supplementary bonding may read: 415.2.2, 50 V over what opens its device. */
import { describe, expect, it } from "vitest";
import { supplementaryLimit, supplementaryOfCpc } from "../../server/boards/supplementary.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const placeOf = (ways: readonly string[]) => {
  const all = ways.map((lines, at) => `way ${at + 1} radial "Circuit" {\n${lines}\n}`).join("\n");
  const board = "fed-from supply\nsupplementary-bonding bathroom 4 mm²";
  const node = nodeOf(installationOf(inSetting(all, { board }).text), "A");
  const [fact] = node.board.head.facts.all("supplementary-bonding");
  if (!fact) throw new Error("no supplementary bonding");
  return { fact, studies: node.studies };
};
const decided = (...ways: readonly string[]) => {
  const { fact, studies } = placeOf(ways);
  const found = supplementaryLimit(fact, studies);
  return "missing" in found ? found.missing : [found.study.way.id, Number(found.limit.value.toFixed(3))];
};
const of = (rating: string, lines = "serves lighting\nplace bathroom") => `device BS EN 60898 ${rating} 6 kA\n${lines}`;

// Type B opens at 5 × In: 50 V / 30 A, 50 V / 80 A.
it.each([
  [
    [of("B6"), of("B16")],
    ["2", 0.625],
  ],
  [
    [of("B16"), of("B6")],
    ["1", 0.625],
  ],
  [
    [of("B16"), of("B16")],
    ["1", 0.625],
  ],
  [
    [of("B6"), of("B16", "serves lighting")],
    ["1", 1.667],
  ],
  [
    [of("B6"), of("B16", "serves selv\nplace bathroom")],
    ["1", 1.667],
  ],
  [
    ["device BS EN 61009 B6 6 kA 30 mA type A\nplace bathroom", of("B6")],
    ["2", 1.667],
  ],
  [[of("B16", "serves lighting")], "no circuit of this board says that it is in the place (bathroom)"],
  [[of("B6"), "place bathroom"], "what clears a fault on way 2 is not known here"],
] as const)("%j: %j", (ways, wanted) => expect(decided(...ways)).toEqual(wanted));

// 544.2.4: what joins a circuit's protective conductor to pipes is half as large, and 4 mm² where nothing protects it: of 10 mm²
// the next size to 5 mm² is 6 mm², of 16 mm² it is 10 mm²; half of 6 mm² is less than is asked for anyway.
describe("the largest protective conductor of the place", () => {
  const wired = (cable: string, lines = "serves lighting\nplace bathroom") => `cable ${cable}\n${lines}`;
  const singles = (cpc: number, more = "") => `singles line 16 mm² cpc ${cpc} mm²${more}`;
  const asked = (ways: readonly string[]) => {
    const { fact, studies } = placeOf(ways);
    const found = supplementaryOfCpc(fact, studies);
    return found && [found.study.way.id, found.need.value];
  };

  it.each([
    [
      [wired(singles(10)), wired(singles(16))],
      ["2", 10],
    ],
    [
      [wired(singles(16)), wired(singles(10))],
      ["1", 10],
    ],
    [
      [wired(singles(10)), wired(singles(10))],
      ["1", 6],
    ],
    [
      [wired(singles(10)), wired(singles(16), "serves lighting")],
      ["1", 6],
    ],
    [
      [wired("singles line 16 mm²"), wired(singles(10))],
      ["2", 6],
    ],
    [
      [wired(singles(10)), wired(singles(16, " aluminium"))],
      ["1", 6],
    ],
    [[wired(singles(6)), wired(singles(6))], undefined],
    [[wired("singles line 16 mm²")], undefined],
  ])("of %j asks for %j", (ways, wanted) => expect(asked(ways)).toEqual(wanted));
});
