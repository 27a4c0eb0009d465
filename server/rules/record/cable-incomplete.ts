import { workOf } from "../../circuit/supply.ts";
import type { FactOf } from "../../model/values.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "record/cable-incomplete",
  severity: "warning",
  since: "0.1",
  title: "The type of a cable, or the size of one of its conductors, is not stated.",
  why: "No finding does not mean that the cable is right: without its type its capacity is not calculated, and without the protective conductor neither the loop nor what a fault does to it.",
  clauses: ["514.9.1", "523.1", "543.1.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
}`,
    },
    {
      bad: `way 1 radial "Sounders" {
  device       BS EN 60898 B6 6 kA
  cable        fire-resisting  line 1.5 mm²  cpc 1.5 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sounders" {
  device       BS EN 60898 B6 6 kA
  cable        multicore fire-resisting  line 1.5 mm²  cpc 1.5 mm²
}`,
    },
  ],
  check(study, report) {
    const { facts, context, isSpare } = study;
    const fact = facts.one("cable");
    if (isSpare || !fact || facts.isUnread("cable")) return;
    const name = fact.args.use?.value;
    // A name that is not known, or known twice, is spoken of by itself.
    const types = name === undefined ? [fact] : (context.names.cableTypes.get(name) ?? []);
    const [described] = types;
    const missing = types.length === 1 && described ? whatIsMissing(described) : [];
    if (missing.length === 0) return;
    report(factSpot(fact), {
      message: `${missing.map(({ what }) => what).join(" ")} Write ${missing.map(({ write }) => write).join(", and ")}.`,
      ...(workOf(study) === "existing" ? { severity: "information" as const } : {}),
    });
  },
});

function whatIsMissing({ args }: FactOf<"way", "cable">): { what: string; write: string }[] {
  const { construction, line, cpc, cpcBy, r2 } = args;
  // Bars have figures in place of sizes.
  if (construction?.value === "busbar-trunking") return [];
  return [
    ...(construction ? [] : [{ what: "The type of this cable is not stated.", write: "it, such as flat-twin" }]),
    ...(line ? [] : [{ what: "The size of its line conductor is not stated.", write: "line with the size" }]),
    ...(cpc || cpcBy || r2
      ? []
      : [
          {
            what: "Its protective conductor is not stated.",
            write: "cpc with its size, or cpc-by with what serves as it",
          },
        ]),
  ];
}
