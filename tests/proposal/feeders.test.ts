import fc from "fast-check";
import { expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";
import { firstWay, textWith } from "./helpers.ts";

interface Feeder {
  readonly device: string;
  readonly cable: string;
  readonly route: string;
  readonly length: number;
  readonly Ib: number;
  readonly circuits: number;
  readonly ze: number;
  readonly three: boolean;
}

const feeders = fc.record<Feeder>({
  device: fc.constantFrom("", "device BS 88-2 20 A", "device BS EN 60898 C20 10 kA", "device BS 88-3 20 A"),
  cable: fc.constantFrom(
    "",
    "cable armoured 90 °C line 6 mm² cpc-by armour cores 4",
    "cable armoured 90 °C line 6 mm² cpc 6 mm² cores 5",
    "cable multicore line 6 mm² cpc 6 mm² cores 5",
  ),
  route: fc.constantFrom("tray", "clipped method C", "buried depth 600 mm", "tray grouped 4 tray-layer"),
  length: fc.integer({ min: 3, max: 120 }),
  Ib: fc.integer({ min: 5, max: 150 }),
  circuits: fc.integer({ min: 1, max: 4 }),
  ze: fc.constantFrom(0.02, 0.1, 0.3),
  three: fc.boolean(),
});

const circuit = (index: number, three: boolean): string => `way ${index + 1} radial "Circuit" {
  device BS EN 60898 B16 10 kA
  cable multicore line 2.5 mm² cpc 2.5 mm² cores 3
  route clipped method C
  length 10 m
  Ib ${8 + index} A
  serves appliance
  ${three ? `phase L${(index % 3) + 1}` : ""}
}`;

const textOf = ({ device, cable, route, length, Ib, circuits, ze, three }: Feeder): string => `wayfile 1
installation "Works" {
standard BS 7671:2018+A2:2022
stage design
work new
premises commercial
supply {
earthing TN-S
phases ${three ? "three" : "single"}
Ze ${ze} Ω
Ipf 5 kA
}
board A "Main" {
fed-from supply
way 1 feeder "Shop" {
${three ? "phase three" : ""}
${device}
${cable}
route ${route}
length ${length} m
Ib ${Ib} A
feeds B
}
}
board B "Shop" {
fed-from A
${three ? "phases three" : ""}
${Array.from({ length: circuits }, (_, index) => circuit(index, three)).join("\n")}
}
}
`;

/** That less is written for a feeder than its board draws is the writer's, and the proposal says so. */
const judged = (check: string): boolean => /^(?:design|drop|loop|fault|coordination|energy|network|rcd)\//.test(check);

it("a proposed feeder is accepted, however the board behind it loads its lines", () => {
  let fitted = 0;
  fc.assert(
    fc.property(feeders, (feeder) => {
      const file = fileOfText("a.ways", textOf(feeder));
      const study = firstWay(file);
      const proposal = propose(study, {}, installationsOf([file])[0]);
      if (proposal.outcome !== "fits") return;
      fitted++;
      const after = textWith(file, study, proposal);
      const lines = after.split("\n");
      const [from, to] = [/^ *way 1 feeder/, /^ *board B/].map((start) => lines.findIndex((line) => start.test(line)));
      const found = findingsOf(after).filter(
        ({ check, line, severity }) =>
          line >= (from ?? 0) && line < (to ?? 0) && severity !== "information" && judged(check),
      );
      expect(found).toEqual([]);
    }),
    { numRuns: 200 },
  );
  expect(fitted).toBeGreaterThan(80);
});
