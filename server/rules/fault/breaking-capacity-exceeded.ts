import { exceeds } from "../../calc/compare.ts";
import { kiloamps, relation } from "../../calc/result.ts";
import { breakingOf, conditionalAt, conditionalPossible, nextBreaking } from "../../circuit/breaking.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { Device } from "../../circuit/device.ts";
import { greatestFault } from "../../circuit/faults.ts";
import type { Context } from "../../model/installation.ts";
import type { Quantity } from "../../model/values.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import { uncertaintyOnBoard } from "../../readings/uncertainty.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "fault/breaking-capacity-exceeded",
  severity: "error",
  since: "0.1",
  title: "The fault current at a board exceeds the breaking capacity of a device.",
  why: "A device that has to break more than its breaking capacity may burst or weld shut. Fit one of a higher breaking capacity, or one that is backed up by the device upstream, as its maker states.",
  clauses: ["434.5.1", "536.4.2.1"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.03 Ω\nIpf 8.2 kA" },
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
                               ^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 10 kA
}`,
    },
    {
      setting: { supply: "earthing TN-S\nIpf 1.4 kA", work: "existing" },
      bad: `way 1 radial "Heater" {
  device       BS 3036 15 A
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS 3036 15 A 2 kA
}`,
    },
  ],
  check(study, report) {
    const { device, context } = study;
    const fault = greatestFault(context);
    const capacity = device && breakingOf(study);
    if (!device || !fault || !capacity || study.isSpare) return;
    if (!exceeds(fault.value, capacity.value) || isBrokenTogether(device, context, fault.value)) return;
    const written = device.fact.args.breaking;
    const flows = `${fault.sign === ">" ? "more than" : "up to"} ${kiloamps(fault.value)}`;
    const breaks = kiloamps(capacity.value);
    const reading = quantityOf(readingAt(fault.fact));
    const meter = reading && uncertaintyOnBoard(context, fault.fact, reading);
    const near = withinUncertainty(meter, fault.value - capacity.value);
    report(written ? valueSpot(device.fact, written) : factSpot(device.fact), {
      message: written
        ? `The ${deviceName(device)} device breaks ${breaks}; the fault current at this board is ${flows}.${near}${markedUnit(context, fault.value)}`
        : `The fault current here is ${flows}, and a ${deviceName(device)} may break only ${breaks}: read its marking and record it.${near}`,
      // What the device breaks is taken from its standard, not from the device.
      ...(written ? {} : { severity: "warning" as const }),
      value: amount(fault.value, "A"),
      limit: amountOf(capacity),
      steps: [...capacity.steps, relation("Icn ≥ Ipf", breaks, kiloamps(fault.value)), ...uncertaintySteps(meter)],
      source: capacity.source,
      related: [
        {
          spot: factSpot(fault.fact),
          message: `${fault.name} ${kiloamps(fault.value)} ${fault.at === "supply" ? "at the origin" : "at this board"}.`,
        },
      ],
      fixes: written && device.family === "breaker" ? nextFix(written, fault.value) : [],
    });
  },
});

/** Behind a named device upstream both break the fault (A) together; an assembly is tested as a whole. */
function isBrokenTogether(device: Device, context: Context, fault: number): boolean {
  if (device.fact.args.class?.value === "back-up") return true;
  const conditional = conditionalAt(context);
  return conditional !== undefined && fault <= conditional;
}

/** What the marking of a consumer unit would allow for a fault (A) that its devices alone do not break. */
function markedUnit(context: Context, fault: number): string {
  const assembly = conditionalPossible(context);
  return assembly && fault <= assembly.value
    ? ` Where the consumer unit is marked ${kiloamps(assembly.value)} behind its service fuse, write conditional-rating.`
    : "";
}

function nextFix(written: Quantity, fault: number) {
  const next = nextBreaking(fault);
  return next ? [inPlaceOf(written, kiloamps(next), `Make it ${kiloamps(next)}`)] : [];
}
