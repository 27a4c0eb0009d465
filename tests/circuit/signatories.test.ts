/**
 * Who answers for a block of tests. A year and a day before a signature, or an inspection, a test may still be one of its
 * own (common practice, `model/inspections.ts`).
 */
import { expect, it } from "vitest";
import { testerOf } from "../../server/circuit/signatories.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

const tester = ({ inspections = "", signed = 'tested by "B.O." 2026-03-05', header = "2026-03-05" }) => {
  const text = `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  stage tested
  ${inspections}
  board A "Board" {
    fed-from supply
    ${signed}
    way 1 radial "Kiln" {
      device BS EN 60898 B32 6 kA
      live ${header} {
        Zs 0.62 Ω
      }
    }
  }
}`;
  const { way, context } = wayOf(nodeOf(installationOf(text), "A"), "1");
  const [test] = way.facts.all("live");
  return test && testerOf(test, way, context);
};
const inspection = (day: string, lines = "") => `inspection periodic ${day} {\nextent "All"\n${lines}\n}`;

it.each([
  ["the nearest signature", {}, "B.O."],
  ["whom the block names", { header: '2026-03-05 by "C.P."' }, "C.P."],
  ["nobody where nobody signed", { signed: "" }, undefined],
  ["a signature of 366 days later", { header: "2025-03-04" }, "B.O."],
  ["no signature of 367 days later", { header: "2025-03-03" }, undefined],
  ["who signed the inspection", { inspections: inspection("2026-03-05", 'tested by "A.N." 2026-03-05') }, "A.N."],
  [
    "who signed an inspection of the circuit, not one of another",
    { inspections: inspection("2026-03-05", 'covers board A way 2\ntested by "A.N." 2026-03-05') },
    "B.O.",
  ],
  ["the nearest signature, for an inspection that nobody signed", { inspections: inspection("2026-03-05") }, "B.O."],
  [
    "nobody, where the inspection is of another time than the signature",
    { inspections: inspection("2025-06-01"), header: "2025-06-01" },
    undefined,
  ],
  [
    "nobody, where a second inspection is what the signature is of",
    { inspections: `${inspection("2025-06-01")}\n${inspection("2026-03-05")}`, header: "2025-06-01" },
    undefined,
  ],
  ["a signature without its day", { signed: 'tested by "B.O."' }, "B.O."],
  ["it for an inspection", { signed: 'tested by "B.O."', inspections: inspection("2026-03-05") }, "B.O."],
  [
    "nobody, where it has no day and the tests follow every inspection",
    { signed: 'tested by "B.O."', inspections: inspection("2025-06-01") },
    undefined,
  ],
])("%s", (_, schedule, who) => expect(tester(schedule)).toBe(who));
