import { premisesOf } from "../../circuit/supply.ts";
import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

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
    const { way, context } = study;
    const common = commonPart.test(way.title) || commonPart.test(context.board.title);
    // Whether a student's room is a household is argued about, and a common stair is none: 411.3.4 speaks of those.
    const most = premisesOf(context) === "student" || common ? "warning" : undefined;
    const note = common
      ? " Common stairs and halls are in no dwelling: if all its lights are there, write departure 411.3.4 with that reason."
      : "";
    reportMissing(study, report, "dwelling-lighting", "Luminaires where people live need", most, note);
  },
});

/** “Landlord's panel”, “Communal lights”, “Common stairs”: not “Landing”, which a house has too. */
const commonPart = /\b(?:landlord|communal|common (?:area|hall|landing|part|stair|way|corridor))/i;
