import { makes } from "../../circuit/constructions.ts";
import { laterRule } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { ruleAlone } from "../../tables/source.ts";
import { capital } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/cable-not-allowed",
  severity: "warning",
  since: "0.1",
  title: "A cable is not allowed on a jetty or pontoon.",
  why: "Pontoons move, and salt water gets everywhere: thin insulation in a conduit, aluminium and mineral cable do not last there, and an overhead line is caught by masts.",
  clauses: ["709.521.1.6"],
  examples: [
    {
      bad: `way 1 radial "Berth 4" {
  cable        singles 70 °C  line 4 mm²  cpc 4 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  route        conduit  method B
  place        marina
}`,
      good: `way 1 radial "Berth 4" {
  cable        armoured 90 °C  line 4 mm²  cpc 4 mm²  cores 3
  route        clipped  method C
  place        marina
}`,
    },
  ],
  check(study, report) {
    const { cable, places, isSpare } = study;
    const what = notAllowed(study);
    if (!cable || isSpare || what === undefined || !places.has("marina") || places.has("indoors")) return;
    const later = laterRule(study);
    report(factSpot(cable.fact), {
      message: `${capital(what)} may not be used on or above a jetty or pontoon: use armoured or heavy flexible cable; ashore, write place ordinary.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 709.521.1.6", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});

function notAllowed({ cable, facts }: WayStudy): string | undefined {
  if (cable?.material === "aluminium") return "aluminium cable";
  if (cable?.construction === "mineral" || cable?.construction === "singles") return makes[cable.construction].named;
  return facts.all("route").some(({ args }) => args.kind?.value === "overhead") ? "an overhead line" : undefined;
}
