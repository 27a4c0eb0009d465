import { fallsShort } from "../../calc/compare.ts";
import { leastShareOfOne } from "../../calc/diversity.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps, plain, step } from "../../calc/result.ts";
import { currentOf, currentOfAll, loadTerms } from "../../circuit/loads.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { FactOf } from "../../model/values.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

const resistive = ["shower", "water-heater", "heating"];
/** A load of one of these is one machine; lights and sockets may be many, of which few draw at once. */
const machines = [...resistive, "cooker", "ev-charger", "heat-pump", "appliance"];

export default wayRule({
  id: "design/load-disagrees",
  severity: "warning",
  since: "0.1",
  title: "The design current Ib does not agree with the loads listed.",
  why: "One of the two belongs to another circuit or another voltage, and the device was chosen by one of them.",
  clauses: ["311.1", "433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Shower" {
  device       BS EN 60898 B40 6 kA
  serves       shower
  load         9.5 kW "Shower"
  Ib           31 A
               ^^^^
}`,
      good: `way 1 radial "Shower" {
  device       BS EN 60898 B45 6 kA
  serves       shower
  load         9.5 kW "Shower"
  Ib           41.3 A
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 D16 6 kA
  serves       motor
  load         3 kW "Saw"
  overload     12 A
  Ib           9 A
               ^^^
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 D20 6 kA
  serves       motor
  load         3 kW "Saw"
  overload     20 A
  Ib           17.6 A
}`,
    },
    {
      bad: `way 1 radial "Car charging point" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  serves       ev-charger
  load         22 kW "Charging point"
  Ib           16 A
               ^^^^
}`,
      good: `way 1 radial "Car charging point" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  serves       ev-charger
  load         3.7 kW "Charging point"
  Ib           16 A
}`,
    },
  ],
  check(study, report) {
    const Ib = study.facts.one("Ib");
    const loads = study.facts.all("load");
    const [first] = loads;
    if (!Ib || !first || study.facts.broken.some((word) => word === "load" || word === "phase")) return;
    const sum = currentOfAll(loads, study);
    const formula = loadTerms(loads, study);
    if (sum <= 0) return;
    const stated = Ib.args.value.value;
    const belowOutput = isBelowOutput(study, loads, stated, sum);
    const differs = belowOutput || differsFromOne(study, loads, stated, sum);
    const least = leastShareOfOne();
    const excess = practiceOf("load-excess");
    const belowShare = !differs && areMachines(study) && fallsShort(stated, least.value * largestOf(loads, study));
    if (!differs && !belowShare && stated <= excess.value * sum + 1) return;
    const threshold = differs ? practiceOf("load-share") : belowShare ? least : excess;
    report(valueSpot(Ib, Ib.args.value), {
      message: belowOutput
        ? `Ib is stated as ${amps(stated, sum)}, but a motor of this power draws at least ${amps(sum, stated)}: which is right?`
        : `Ib is stated as ${amps(stated, sum)}, but the loads listed come to ${amps(sum, stated)}${belowShare ? ", far more than diversity takes away" : ""}: which is right?`,
      value: amount(stated, "A"),
      steps: [step(`I = ${formula.name}`, formula.terms, amps(sum)), ...threshold.steps],
      source: threshold.source,
      related: [{ spot: factSpot(first), message: `Loads listed: ${amps(sum)}.` }],
      // A current the device does not carry is no cure: then both have to be reviewed.
      fixes:
        differs && !belowOutput && sum <= (study.device?.rating ?? Number.POSITIVE_INFINITY)
          ? [inPlaceOf(Ib.args.value, `${plain(sum, 1)} A`, `Make Ib ${amps(sum)}`)]
          : [],
    });
  },
});

/** What a motor delivers is drawn at the least, whatever its efficiency and its power factor. */
function isBelowOutput({ uses }: WayStudy, loads: readonly FactOf<"way", "load">[], stated: number, sum: number) {
  const [only, ...others] = loads;
  if (!only || others.length > 0 || uses.size !== 1 || !uses.has("motor")) return false;
  // Where its efficiency is stated, what is calculated is as rounded as the plate.
  return stated < (only.args.efficiency ? 1 - practiceOf("load-share").value : 1) * sum;
}

/** Diversity brings a sum of loads down, and a power factor brings it up: only one resistive load is known closely. */
function differsFromOne({ uses }: WayStudy, loads: readonly unknown[], stated: number, sum: number): boolean {
  const isOne = loads.length === 1 && uses.size > 0 && [...uses].every((use) => resistive.includes(use));
  const apart = Math.abs(stated - sum);
  return isOne && apart > practiceOf("load-share").value * sum && apart > 1;
}

const areMachines = ({ uses }: WayStudy): boolean => uses.size > 0 && [...uses].every((use) => machines.includes(use));

const largestOf = (loads: readonly FactOf<"way", "load">[], study: WayStudy): number =>
  Math.max(...loads.map((load) => currentOf(load, study)));
