import { premisesOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { reportMissing } from "../common/additional.ts";
import { type Severity, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-lighting",
  severity: "error",
  since: "0.1",
  title: "Lighting where people live is not protected by a 30 mA RCD.",
  why: "Since 2018 luminaires in dwellings are protected by an RCD: lamps are changed by people who do not isolate them.",
  clauses: ["411.3.4", "415.1.1"],
  examples: [
    {
      setting: { premises: "dwelling" },
      bad: `way 1 radial "Lights" {
  device       BS EN 60898 B6 6 kA
  serves       lighting
  ^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "dwelling-lighting", "Luminaires where people live need", () => gradeOf(study));
  },
});

function gradeOf({ way, context }: WayStudy): { readonly most?: Severity; readonly note?: string } {
  // Common stairs are in no household, and whether a student's room is one is argued about: 411.3.4 speaks of those.
  if (commonPart.test(way.title) || commonPart.test(context.board.title))
    return {
      most: "warning",
      note: " Common stairs and halls are in no dwelling: if all its lights are there, write departure 411.3.4 with that reason.",
    };
  return premisesOf(context) === "student" ? { most: "warning" } : {};
}

/** “Landlord's panel”, “Communal lights”, “Common stairs”: not “Landing”, which a house has too. */
const commonPart = /\b(?:landlord|communal|common (?:area|hall|landing|part|stair|way|corridor))/i;
