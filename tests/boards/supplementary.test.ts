/** Which circuit of a place decides what its supplementary bonding may read: 415.2.2, 50 V over what opens its device. */
import { expect, it } from "vitest";
import { supplementaryLimit } from "../../server/boards/supplementary.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const decided = (...ways: readonly string[]) => {
  const all = ways.map((lines, at) => `way ${at + 1} radial "Circuit" {\n${lines}\n}`).join("\n");
  const board = "fed-from supply\nsupplementary-bonding bathroom 4 mm²";
  const node = nodeOf(installationOf(inSetting(all, { board }).text), "A");
  const [fact] = node.board.head.facts.all("supplementary-bonding");
  const found = fact && supplementaryLimit(fact, node.studies);
  return found && ("missing" in found ? found.missing : [found.study.way.id, Number(found.limit.value.toFixed(3))]);
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
