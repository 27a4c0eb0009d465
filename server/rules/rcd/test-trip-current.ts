import { exceeds, fallsShort } from "../../calc/compare.ts";
import { rcdTripBand } from "../../calc/index.ts";
import { milliamps } from "../../calc/result.ts";
import type { Rcd } from "../../circuit/way.ts";
import { type Fact, type FactOf, type Quantity, quantityOf } from "../../model/values.ts";
import { meterTests } from "../../readings/meter-tests.ts";
import { deviceOnBoard, liveOfBoard, rcdLabel } from "../../readings/rcd-tests.ts";
import { type Uncertainty, uncertaintyAmong } from "../../readings/uncertainty.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, boardRule, factSpot, type Reporter, valueSpot } from "../frame/rule.ts";

type TripFact = FactOf<"live" | "boardLive", "trip-current">;

export default boardRule({
  id: "rcd/test-trip-current",
  severity: "error",
  since: "0.1",
  title: "The trip current of an RCD is outside the band of its type.",
  why: "Above the band it allows more than its rating; below it, it trips on leakage that is no fault. Test again with the loads disconnected before the device is condemned.",
  clauses: ["643.8", "531.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current  44 mA
                  ^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current  22 mA
  }
}`,
    },
    {
      setting: { stage: "tested", board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `live 2026-03-05 {
  trip-current  east 44 mA
                     ^^^^^
}`,
      good: `live 2026-03-05 {
  trip-current  east 22 mA
}`,
    },
  ],
  check({ context, studies }, report) {
    const tests = meterTests(context, studies);
    const uncertainties: UncertaintyOf = (fact, reading) =>
      uncertaintyAmong(context.names, tests, fact as Fact, reading);
    const seen = new Set<Rcd["fact"] | undefined>();
    for (const { facts } of liveOfBoard(context)) {
      for (const fact of facts.all("trip-current")) {
        const rcd = deviceOnBoard(fact, context);
        if (rcd && !seen.has(rcd.fact)) checkFact(fact as TripFact, rcd, uncertainties, report);
        seen.add(rcd?.fact);
      }
    }
    for (const study of studies) {
      const fact = study.liveTests.find(({ facts }) => facts.has("trip-current"))?.facts.one("trip-current");
      if (fact) checkFact(fact as TripFact, study.rcds[0], uncertainties, report);
    }
  },
});

type UncertaintyOf = (fact: TripFact, reading: Quantity) => Uncertainty | undefined;

function checkFact(fact: TripFact, rcd: Rcd | undefined, uncertainties: UncertaintyOf, report: Reporter): void {
  const reading = quantityOf(fact.args.value);
  const band = rcd?.type && rcdTripBand(rcd.type, rcd.sensitivity);
  if (!reading || !rcd || !band) return;
  const over = exceeds(reading.value, band.greatest.value) && reading.sign !== "<";
  const under = fallsShort(reading.value, band.least.value) && reading.sign !== ">";
  if (!over && !under) return;
  const limit = over ? band.greatest : band.least;
  const meter = uncertainties(fact, reading);
  report(valueSpot(fact, reading), {
    message: `Trip current ${milliamps(reading.value)} is ${over ? "above" : "below"} the ${milliamps(band.least.value)} to ${milliamps(band.greatest.value)} of a ${milliamps(rcd.sensitivity)} type ${rcd.type} RCD.${withinUncertainty(meter, Math.abs(reading.value - limit.value))}`,
    value: amount(reading.value, "A"),
    limit: amountOf(limit),
    least: under,
    steps: [...limit.steps, ...uncertaintySteps(meter)],
    source: limit.source,
    related: [{ spot: factSpot(rcd.fact), message: `RCD tested: ${rcdLabel(rcd)}.` }],
  });
}
