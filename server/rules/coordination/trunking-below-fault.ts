import { trunkingWithstand } from "../../boards/busbar-trunking.ts";
import { leastFaults, leastShort } from "../../boards/fault-levels.ts";
import type { BoardNode, StudiedBoard } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { type Calculated, kiloamps, plain, relation, seconds, step } from "../../calc/result.ts";
import type { Withstand } from "../../circuit/cable.ts";
import { memoOfBoard } from "../../circuit/kept.ts";
import { tripTime } from "../../circuit/trip.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { Way } from "../../model/file.ts";
import { combine, squared } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const sample = (figures: string) => `wayfile 1
cable-type rise busbar-trunking  line 120 mm²  cpc-by casing  carries 250 A  r1 0.16 mΩ/m  r2 0.2 mΩ/m  r1-hot 0.2 mΩ/m  r2-hot 0.24 mΩ/m  x 0.07 mΩ/m  ${figures}  by "Sheet 3"
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    phases       three
    Ze           0.04 Ω
    Ipf          14 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Rising main" {
      device       BS 88-2 200 A 80 kA gG
      phase        three
      cable        rise
      route        clipped
      length       30 m
    }
  }
}`;

export default installationRule({
  id: "coordination/trunking-below-fault",
  severity: "error",
  since: "0.1",
  title: "A busbar trunking does not withstand the short-circuit current that may flow into it.",
  why: "The forces of a short circuit bend bars and burst their supports within half a cycle, and its heat does the rest. Icw is what the trunking withstands for the time its maker states, Icc what it withstands behind the very device it was tested with. Choose a trunking that withstands more, or a device that its maker lists with it.",
  clauses: ["434.5.2", "536.4.201"],
  examples: [
    {
      bad: sample("Icw 10 kA").replace("cable        rise\n", "cable        rise\n      ^^^^^^^^^^^^^^^^^\n"),
      good: sample("Icw 16 kA"),
    },
    {
      bad: sample("Icw 10 kA").replace("cable        rise\n", "cable        rise\n      ^^^^^^^^^^^^^^^^^\n"),
      good: sample("Icw 10 kA  Icc 50 kA"),
    },
  ],
  checkNode(node, report) {
    for (const way of trunkingsOn(node)) checkWay(node, studyWay(way, node.context), report);
  },
});

const trunkingsOn = memoOfBoard(({ studies }: StudiedBoard): readonly Way[] =>
  studies.flatMap((study) => (!study.isSpare && study.cable?.own?.withstands ? [study.way] : [])),
);

function checkWay(node: BoardNode, study: WayStudy, report: Reporter): void {
  const { cable } = study;
  const withstands = cable?.own?.withstands;
  if (!cable || !withstands) return;
  const found = trunkingWithstand(node, study);
  if (!found) return;
  const { fault, noted, most } = found;
  // What is calculated may be more than flows: only what surely flows counts.
  if (exceeds(fault.value, most.value)) {
    report(factSpot(cable.fact), {
      message: `${noted ? "Up to" : "By calculation about"} ${kiloamps(fault.value)} may flow into this busbar trunking, which withstands ${kiloamps(most.value)} (${most.name}): fit one that withstands more.`,
      value: amount(fault.value, "A"),
      limit: amount(most.value, "A"),
      steps: [
        ...fault.steps,
        ...most.steps,
        relation(`fault ≤ ${most.name}`, kiloamps(fault.value), kiloamps(most.value)),
      ],
      source: most.source,
      ...(noted ? {} : { severity: "warning" as const }),
      related: noted ? [{ spot: factSpot(noted.fact), message: `${noted.name} ${kiloamps(noted.value)}.` }] : [],
    });
    return;
  }
  const heat = hottest(node, study, withstands);
  if (!heat) return;
  const { current, time, energy, limit } = heat;
  report(factSpot(cable.fact), {
    message: `${kiloamps(current.value)} for ${seconds(time.value)} heats this busbar trunking more than its Icw of ${kiloamps(limit.Icw)} for ${seconds(limit.time)} allows: a quicker device, or a lower loop.`,
    value: amount(energy, "A²s"),
    limit: amount(limit.energy, "A²s"),
    steps: [
      ...current.steps,
      ...time.steps,
      step("I² × t", `(${kiloamps(current.value)})² × ${seconds(time.value)}`, `${plain(energy, 0)} A²s`),
      step("Icw² × t", `(${kiloamps(limit.Icw)})² × ${seconds(limit.time)}`, `${plain(limit.energy, 0)} A²s`),
    ],
    source: combine(squared(current.source), time.source, limit.source),
    ...(heat.atMost ? { severity: "warning" as const } : {}),
  });
}

/** The fault at its end whose heat is more than Icw stands for: the smallest lasts longest. */
function hottest(node: BoardNode, study: WayStudy, { Icw, time: stated }: Withstand) {
  if (!Icw) return undefined;
  const faults = leastFaults(node, study);
  const currents = [leastShort(faults), study.supply.earthing === "TT" ? undefined : faults.earth];
  const limit = { Icw: Icw.value, time: stated, energy: Icw.value ** 2 * stated, source: Icw.source };
  return currents
    .flatMap((current: Calculated | undefined) => {
      const trip = current && tripTime(study, current.value);
      // A fuse that may be quicker than its curve is kept for says nothing; a delay that is set is as long as it is set.
      if (!trip || (trip.atMost && !study.device?.settings)) return [];
      const energy = current.value ** 2 * trip.time.value;
      return exceeds(energy, limit.energy) ? [{ current, time: trip.time, energy, limit, atMost: trip.atMost }] : [];
    })
    .toSorted((one, other) => other.energy - one.energy)[0];
}
