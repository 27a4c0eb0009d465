import { rcdLimit } from "../../calc/practice.ts";
import { laterRule } from "../../circuit/describe.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

/** 421.1.7 lists these. */
const listed = ["shared-house", "student", "care-home", "tall-residential"];

export default wayRule({
  id: "afdd/missing",
  severity: "error",
  since: "0.1",
  title: "Sockets without an AFDD, in premises where it is required.",
  why: "Where people sleep who cannot leave quickly, an AFDD is what detects an arcing joint in the wiring.",
  clauses: ["421.1.7"],
  examples: [
    {
      setting: { premises: "care-home" },
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  afdd         BS EN 62606
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const { context, device, facts } = study;
    const { edition } = context;
    const serves = facts.one("serves");
    if (edition?.afdd !== "required-in-listed-premises" || !serves || !device?.rating || facts.has("afdd")) return;
    if (!study.servesSockets || !study.isFinal || study.threePhase || !listed.includes(premisesOf(context) ?? ""))
      return;
    // The rule shares its 32 A with that for sockets in general.
    if (device.rating > rcdLimit("outdoors").value) return;
    const later = laterRule(study);
    report(factSpot(serves), {
      message: `Socket circuits up to 32 A in these premises need an AFDD, and none is recorded here.${later.words}`,
      source: edition.sources.afdd,
      ...(later.severity ? { severity: later.severity } : {}),
      related: [{ spot: factSpot(device.fact), message: "The device to which the AFDD belongs." }],
      fixes: [lineAfter(device.fact, "afdd BS EN 62606", "Add an AFDD")],
    });
  },
});
