import { makes } from "../../circuit/constructions.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/cable-not-for-ground",
  severity: "error",
  since: "0.1",
  title: "A cable direct in the ground has no earthed armour.",
  why: "A spade goes through it, and nothing earthed is between its edge and the line conductor. Only armour or a metal sheath, or a conduit or duct as strong, protects a buried cable.",

  clauses: ["522.8.10"],
  examples: [
    {
      bad: `way 1 radial "Gate" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route        buried  length 14 m
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Gate" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        armoured 70 °C  line 2.5 mm²  cpc 2.5 mm²  cores 3
  route        buried  length 14 m
}`,
    },
  ],
  check(study, report) {
    const { cable, facts, isSpare } = study;
    if (!cable || isSpare || makes[cable.construction].forGround) return;
    if (study.uses.size > 0 && [...study.uses].every((use) => use === "selv")) return;
    const buried = facts.all("route").find(({ args }) => args.kind?.value === "buried");
    if (!buried) return;
    report(factSpot(buried), {
      message: `${makes[cable.construction].named} lies direct in the ground: use armoured cable, or a duct as strong.`,
      related: [{ spot: factSpot(cable.fact), message: "Cable without armour." }],
    });
  },
});
