import { homes } from "../../circuit/circuit-kind.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { quotedIn } from "../../tables/source.ts";
import { listed } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/alarms-share-circuit",
  severity: "error",
  since: "0.1",
  title: "A safety service shares a circuit with other loads.",
  why: "A safety service has a circuit of its own: otherwise a faulty appliance switches off the alarm with itself. In a home smoke alarms may share the circuit of lights in daily use, where their loss is noticed.",

  clauses: ["560.7.1"],
  examples: [
    {
      bad: `way 1 ring "Office" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets alarms
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Office" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
}`,
    },
    {
      bad: `way 1 radial "Corridor" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets emergency-lighting
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Corridor" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting emergency-lighting
}`,
    },
  ],
  check({ facts, uses, isFinal, context }, report) {
    const serves = facts.one("serves");
    if (!serves || !isFinal) return;
    if (!uses.has("alarms")) {
      const strange = uses.has("emergency-lighting") ? [...uses].filter((use) => !besideLights.includes(use)) : [];
      if (strange.length > 0)
        report(factSpot(serves), {
          message: `Emergency lights are on a circuit that serves ${listed(strange)}: give them one of their own, or those with batteries the circuit of the lights they stand in for, so that they light when these go out.`,
          source: quotedIn("560.7.1"),
          severity: "warning",
        });
      return;
    }
    const others = [...uses].filter((use) => !quiet.includes(use));
    if (others.length === 0) return;
    const withLights = homes.includes(premisesOf(context) ?? "") && others.every((use) => use === "lighting");
    report(factSpot(serves), {
      message: withLights
        ? "The alarms share a lighting circuit, as they may in a home: make sure that it is one in daily use."
        : `Alarms need a circuit of their own: this one serves ${listed(others)} as well.`,
      source: quotedIn("560.7.1"),
      ...(withLights ? { severity: "information" as const } : {}),
    });
  },
});

const besideLights: readonly string[] = ["emergency-lighting", "lighting", "control", "data"];
const quiet: readonly string[] = ["alarms", "control", "data", "emergency-lighting"];
