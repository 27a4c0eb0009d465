import type { Use } from "../../../grammar/choices.ts";
import { homes } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { isOutsideWork, premisesOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Context } from "../../model/installation.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

const sample = (spd: string) => `wayfile 1
installation "Hall" {
  standard     BS 7671:2018+A2:2022
  premises     commercial
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    spd          ${spd}
    way 1 radial "Fire alarm" {
      device       BS EN 60898 B6 6 kA
      serves       alarms
    }
  }
}`;

const ofLets = (spd: string) =>
  sample(spd)
    .replace("commercial", "shared-house")
    .replace('"Fire alarm"', '"Stair lights"')
    .replace("alarms", "lighting emergency-lighting");

const ofCare = (spd: string) =>
  sample(spd)
    .replace("commercial", "care-home")
    .replace('"Fire alarm"', '"Lifting baths"')
    .replace("alarms", "appliance");

const bad = 'not-fitted "Not wanted"';

export default boardRule({
  id: "surge/omitted-with-safety-service",
  severity: "error",
  since: "0.1",
  title: "Surge protection is omitted where a safety service depends on the supply.",
  why: "A surge that takes out the fire alarm, the emergency lighting or what keeps a patient alive is found when they are needed. There surge protection is not the owner’s choice: fit it, upstream of the board or in it.",
  clauses: ["443.4.1"],
  examples: [
    {
      bad: sample(bad).replace(`${bad}\n`, `${bad}\n    ${"^".repeat(`spd          ${bad}`.length)}\n`),
      good: sample("fitted"),
    },
    {
      bad: ofCare(bad).replace(`${bad}\n`, `${bad}\n    ${"^".repeat(`spd          ${bad}`.length)}\n`),
      good: ofCare("fitted"),
    },
    {
      bad: ofLets(bad).replace(`${bad}\n`, `${bad}\n    ${"^".repeat(`spd          ${bad}`.length)}\n`),
      good: ofLets("fitted"),
    },
  ],
  check({ board, context, studies }, report) {
    const { supply, edition } = context;
    if (edition?.spd !== "consequence") return;
    const here = board.head.facts.one("spd");
    const above = context.upstream.map((one) => one.board.facts.one("spd"));
    const all = [here, ...above, supply?.one("spd")].flatMap((fact) => (fact ? [fact] : []));
    const [omitted] = all;
    if (!omitted || all.some(({ args }) => args.fitted.value === "fitted")) return;
    const service = serviceOf(context, studies);
    if (!service) return;
    const later = laterRule(context);
    // The board's own line, or the circuit the supply's line speaks of.
    const fact = here ?? service.fact;
    report(factSpot(fact), {
      message: `Surge protection is omitted, and ${service.what}: there it is required, whatever the owner says. Fit it.${later.words}`,
      source: edition.sources.spd,
      // What depends on it in a care home is not stated: a question more than a fault.
      ...(service.severity ? { severity: service.severity } : {}),
      ...(later.severity ? { severity: later.severity } : {}),
      related: [
        { spot: factSpot(omitted), message: "Surge protection stated as omitted." },
        ...(service.fact === fact
          ? []
          : [{ spot: factSpot(service.fact), message: "The service that depends on it." }]),
      ],
    });
  },
});

const services: readonly (readonly [use: Use, words: string])[] = [
  ["alarms", "fire alarms are"],
  ["emergency-lighting", "emergency lighting is"],
];

/**
 * What here must go on working: the alarms of a home warn of fire by themselves, and are not meant. The escape lighting of
 * a house of several lets is.
 */
function serviceOf(context: Context, studies: readonly WayStudy[]) {
  const home = homes.includes(premisesOf(context) ?? "");
  for (const study of studies) {
    if (study.isSpare || isOutsideWork(study)) continue;
    const serves = study.facts.one("serves");
    const medical = study.placeLine("medical");
    if (medical) return { what: "a medical location depends on this supply", fact: medical, severity: undefined };
    if (!serves) continue;
    for (const [use, words] of services)
      if (study.uses.has(use) && !(home && use === "alarms"))
        return { what: `${words} on this supply`, fact: serves, severity: undefined };
  }
  const premises = context.installation.facts.one("premises");
  return premises?.args.premises.value === "care-home"
    ? { what: "those who are cared for here depend on it", fact: premises, severity: "warning" as const }
    : undefined;
}
