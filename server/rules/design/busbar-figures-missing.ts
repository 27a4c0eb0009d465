import type { Cable } from "../../circuit/way.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

const type = (figures: string) => `wayfile 1
cable-type rise busbar-trunking  line 120 mm²  cpc-by casing  ${figures}
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 radial "Rising main" {
      device       BS 88-2 200 A 80 kA gG
      cable        rise
      route        clipped
    }
  }
}`;

const all =
  'carries 250 A  r1 0.16 mΩ/m  r2 0.2 mΩ/m  r1-hot 0.2 mΩ/m  r2-hot 0.24 mΩ/m  x 0.07 mΩ/m  Icw 12 kA  by "Sheet 3"';

export default wayRule({
  id: "design/busbar-figures-missing",
  severity: "warning",
  since: "0.1",
  title: "Figures of a busbar trunking that only its maker has are not stated.",
  why: "No table of the standard rates busbar trunking. Its load, its loop, its voltage drop and what it withstands in a short circuit follow from its maker's figures, and what is not stated is not judged.",
  clauses: ["521.4", "132.6"],
  examples: [
    {
      bad: type('carries 250 A  by "Sheet 3"').replace(
        "cable        rise\n",
        "cable        rise\n      ^^^^^^^^^^^^^^^^^\n",
      ),
      good: type(all),
    },
  ],
  check(study, report) {
    const { cable, isSpare } = study;
    if (cable?.construction !== "busbar-trunking" || isSpare) return;
    const missing = missingOf(cable);
    if (missing.length === 0) return;
    report(factSpot(cable.fact), {
      message: `Of this busbar trunking ${missing.join(", ")} ${missing.length > 1 ? "are" : "is"} not stated: take ${missing.length > 1 ? "them" : "it"} from its maker's sheet.`,
    });
  },
});

/** The words of the figures that are wanted. A core of copper as protective conductor has its own by size. */
function missingOf({ own, cpc, cpcBy }: Cable): string[] {
  const byMaker = cpcBy === "casing" || cpc === undefined;
  const wanted: readonly (readonly [word: string, has: boolean])[] = [
    ["carries", own?.carries !== undefined],
    ["r1", own?.line !== undefined],
    ["r1-hot", own?.lineHot !== undefined],
    ["r2", !byMaker || own?.cpc !== undefined],
    ["r2-hot", !byMaker || own?.cpcHot !== undefined],
    ["x", own?.reactance !== undefined || own?.drop !== undefined],
    ["Icw or Icc", own?.withstands !== undefined],
  ];
  return wanted.flatMap(([word, has]) => (has ? [] : [word]));
}
