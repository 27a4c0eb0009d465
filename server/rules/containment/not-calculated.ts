import { containmentRule, inIt } from "../common/containments.ts";
import { factSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/not-calculated",
  severity: "information",
  since: "0.1",
  title: "How full a conduit or trunking is cannot be calculated.",
  why: "No finding does not mean that the cables fit. The published factors are for single-core cables; the space a sheathed cable takes follows from its diameter, which the maker states.",
  clauses: ["522.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment T1 trunking 50 mm by 50 mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    way 1 radial "Planer" {
      cable        flat-twin  line 4 mm²  cpc 1.5 mm²
      route        in T1
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment T1 trunking 50 mm by 50 mm
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        in T1
    }
  }
}`,
    },
  ],
  judge(study, report) {
    const { missing, contents, fullest } = study;
    if (missing.length === 0 || contents.length === 0 || fullest?.fill.fits === false) return;
    report(factSpot(study.fact), {
      message: `How full ${study.name} is cannot be calculated: ${[...new Set(missing)].join("; ")}.`,
      related: inIt(study),
    });
  },
});
