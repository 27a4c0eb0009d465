import { amps, looked, plain, relation, roughAmps } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { inrushCurrent, startingCurrent, tripsOnStart } from "../../circuit/motor-start.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/trips-on-start",
  severity: "warning",
  since: "0.1",
  title: "A device would trip while the motor starts, or as the transformer is switched on.",
  why: "The magnetic release takes the starting current for a fault. Someone then fits a larger device on the same cable. Choose a type with a higher release, or a soft starter.",

  clauses: ["552.1.1", "533.2.1"],
  examples: [
    {
      bad: `way 1 radial "Tool transformer" {
  device       BS EN 60898 B16 6 kA
  serves       transformer
  ^^^^^^^^^^^^^^^^^^^^^^^^
  Ib           13 A
}`,
      good: `way 1 radial "Tool transformer" {
  device       BS EN 60898 D16 6 kA
  serves       transformer
  Ib           13 A
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 B20 6 kA
  serves       motor
  starting     direct 118 A
  ^^^^^^^^^^^^^^^^^^^^^^^^^
  overload     19 A
  Ib           18.8 A
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 D20 6 kA
  serves       motor
  starting     direct 118 A
  overload     19 A
  Ib           18.8 A
}`,
    },
  ],
  check(study, report) {
    const { device, isFinal } = study;
    const inrush = isFinal ? inrushCurrent(study) : undefined;
    const start = inrush ?? (isFinal ? startingCurrent(study) : undefined);
    const curve = device?.curve;
    if (!start || device?.rating === undefined || device.family !== "breaker" || !curve) return;
    // What is only estimated is spoken of where no release of the type would hold.
    const trip = tripsOnStart(start, curve, device.rating);
    if (!trip) return;
    const { from, to, least, most, certain } = trip;
    const at = study.facts.one("starting") ?? study.facts.one("serves") ?? device.fact;
    const current = start.stated ? amps(start.value) : roughAmps(start.value);
    const drawn = inrush
      ? `The transformer draws about ${roughAmps(inrush.least ?? inrush.value)} to ${current} as it is switched on`
      : `The motor takes ${start.stated ? "" : "about "}${current} while it starts`;
    report(factSpot(at), {
      message: `${drawn}, and a ${deviceName(device)} device ${certain ? "trips at that" : "may trip"} (${plain(from)} to ${plain(to)} × In): fit a type with a higher release.`,
      value: amount(Number.parseFloat(current), "A"),
      limit: amount(certain ? most : least, "A"),
      steps: [
        ...start.steps,
        looked(`instantaneous release of type ${curve}`, trip.source.ref, `between ${amps(least)} and ${amps(most)}`),
        relation(`${inrush ? "inrush" : "starting current"} ≤ least that trips it`, current, amps(least)),
      ],
      source: combine(start.source, trip.source),
      // What is estimated, or may just hold, is a question.
      ...(certain ? {} : { severity: "information" as const }),
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    });
  },
});
