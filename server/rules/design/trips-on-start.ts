import { exceeds } from "../../calc/compare.ts";
import { type Calculated, looked } from "../../calc/index.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps, plain, relation, step } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { tripBands } from "../../tables/devices.ts";
import { combine } from "../../tables/source.ts";
import { known } from "../../tables/table.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/trips-on-start",
  severity: "warning",
  since: "0.1",
  title: "A device would trip while the motor starts.",
  why: "The magnetic release takes the starting current for a fault. Someone then fits a larger device on the same cable. Choose a type with a higher release, or a soft starter.",

  clauses: ["552.1.1", "533.2.1"],
  examples: [
    {
      bad: `way 1 radial "Saw" {
  device    BS EN 60898 B20 6 kA
  serves    motor
  Ib        18.8 A
  overload  19 A
  starting  direct 118 A
  ^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Saw" {
  device    BS EN 60898 D20 6 kA
  serves    motor
  Ib        18.8 A
  overload  19 A
  starting  direct 118 A
}`,
    },
  ],
  check(study, report) {
    const { device, isFinal } = study;
    const start = isFinal ? startOf(study) : undefined;
    const curve = device?.curve;
    if (!start || device?.rating === undefined || device.family !== "breaker" || !curve) return;
    const band = (column: "from" | "to") => known(tripBands, { key: curve }, column);
    const [from, to] = [band("from"), band("to")];
    const least = from.value * device.rating;
    const most = to.value * device.rating;
    const certain = exceeds(start.value, most);
    // What is only estimated is spoken of where no release of the type would hold.
    if (!certain && !(start.stated && exceeds(start.value, least))) return;
    const at = study.facts.one("starting") ?? study.facts.one("serves") ?? device.fact;
    report(factSpot(at), {
      message: `The motor takes ${start.stated ? "" : "about "}${amps(start.value)} while it starts, and a ${deviceName(device)} device ${certain ? "trips at that" : "may trip"} (${plain(from.value)} to ${plain(to.value)} × In): fit a type with a higher release.`,
      value: amount(start.value, "A"),
      limit: amount(certain ? most : least, "A"),
      steps: [
        ...start.steps,
        looked(`instantaneous release of type ${curve}`, to.source.ref, `between ${amps(least)} and ${amps(most)}`),
        relation("starting current ≤ least that trips it", amps(start.value), amps(least)),
      ],
      source: combine(start.source, to.source),
      // What is estimated, or may just hold, is a question.
      ...(certain ? {} : { severity: "information" as const }),
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    });
  },
});

/** The current of the motor while it starts, A: as stated, or estimated from how it is started. */
function startOf(study: WayStudy): (Calculated & { readonly stated: boolean }) | undefined {
  const starting = study.facts.one("starting");
  const { current, method } = starting?.args ?? {};
  const how = method?.value ?? "direct";
  const factor = practiceOf(`start-${how}`);
  if (current)
    return {
      value: current.value,
      unit: "A",
      steps: [],
      source: { ref: "As stated", standing: "printed" },
      stated: true,
    };
  const Ib = study.designCurrent?.value;
  const onlyMotor = study.uses.size === 1 && study.uses.has("motor");
  if (Ib === undefined || !onlyMotor || study.facts.broken.includes("starting")) return undefined;
  const value = factor.value * Ib;
  return {
    value,
    unit: "A",
    steps: [step("starting current", `${plain(factor.value)} × ${amps(Ib)}`, amps(value))],
    source: factor.source,
    stated: false,
  };
}
