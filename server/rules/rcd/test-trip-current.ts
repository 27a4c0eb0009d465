import { exceeds, fallsShort } from "../../calc/compare.ts";
import { rcdTripBand } from "../../calc/rcd-time.ts";
import { milliamps } from "../../calc/result.ts";
import type { Rcd } from "../../circuit/way.ts";
import { type FactOf, type Quantity, quantityOf } from "../../model/values.ts";
import { meterTests } from "../../readings/meter-tests.ts";
import { deviceOnBoard, deviceOnWay, liveOfBoard, rcdLabel } from "../../readings/rcd-tests.ts";
import { type Uncertainty, uncertaintyAmong } from "../../readings/uncertainty.ts";
import { withSign } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { wordsAfter } from "../common/writing.ts";
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
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current 44 mA
                 ^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current 22 mA
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current 40 mA
                 ^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    trip-current 24 mA sinusoidal
    trip-current 40 mA pulsating
  }
}`,
    },
    {
      setting: { stage: "tested", board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `live 2026-03-05 {
  trip-current east 44 mA
                    ^^^^^
}`,
      good: `live 2026-03-05 {
  trip-current east 22 mA
}`,
    },
  ],
  check({ context, studies }, report) {
    const tests = meterTests(context, studies);
    const uncertainties: UncertaintyOf = (fact, reading) => uncertaintyAmong(context.names, tests, fact, reading);
    const seen = new Set<Rcd["fact"] | undefined>();
    for (const { facts } of liveOfBoard(context)) {
      for (const fact of facts.all("trip-current")) {
        const rcd = deviceOnBoard(fact, context);
        if (rcd && !seen.has(rcd.fact)) checkFact(fact, rcd, uncertainties, report);
        seen.add(rcd?.fact);
      }
    }
    for (const study of studies) {
      const latest = study.liveTests.find(({ facts }) => facts.has("trip-current"));
      for (const fact of latest?.facts.all("trip-current") ?? [])
        checkFact(fact, deviceOnWay(fact, study), uncertainties, report);
    }
  },
});

type UncertaintyOf = (fact: TripFact, reading: Quantity) => Uncertainty | undefined;

function checkFact(fact: TripFact, rcd: Rcd | undefined, uncertainties: UncertaintyOf, report: Reporter): void {
  const reading = quantityOf(fact.args.value);
  const waveform = fact.args.waveform?.value;
  const band = rcd?.type && rcdTripBand(rcd.type, rcd.sensitivity, waveform);
  if (!reading || !rcd?.type || !band) return;
  const related = [{ spot: factSpot(rcd.fact), message: `RCD tested: ${rcdLabel(rcd)}.` }];
  const meter = uncertainties(fact, reading);
  const outside = beyond(reading, band);
  if (outside) {
    const limit = band[outside];
    report(valueSpot(fact, reading), {
      message: `Trip current ${withSign(reading, milliamps)} is ${outside === "greatest" ? "above" : "below"} the ${span(band)} of a ${milliamps(rcd.sensitivity)} type ${rcd.type} RCD${waveform === undefined ? "" : `, ${named[waveform]}`}.${withinUncertainty(meter, Math.abs(reading.value - limit.value))}`,
      value: amount(reading.value, "A"),
      limit: amountOf(limit),
      least: outside === "least",
      steps: [...limit.steps, ...uncertaintySteps(meter)],
      source: limit.source,
      related,
    });
    return;
  }
  // An instrument applies a.c. unless it is set otherwise, and with a.c. every type trips by its rating.
  const usual = waveform === undefined ? rcdTripBand(rcd.type, rcd.sensitivity, "sinusoidal") : undefined;
  const doubtful = usual && beyond(reading, usual);
  if (!usual || !doubtful) return;
  report(valueSpot(fact, reading), {
    severity: "warning",
    message: `Trip current ${withSign(reading, milliamps)} is ${doubtful === "greatest" ? "above" : "below"} the ${span(usual)} that an a.c. test allows; only with pulsating d.c. may it be ${span(band)}. Write the waveform behind it, or test with a.c.`,
    value: amount(reading.value, "A"),
    limit: amountOf(usual[doubtful]),
    least: doubtful === "least",
    steps: usual[doubtful].steps,
    source: usual[doubtful].source,
    related,
    fixes: wordsAfter(fact, "pulsating", "It was pulsating d.c."),
  });
}

type Band = NonNullable<ReturnType<typeof rcdTripBand>>;

function beyond(reading: Quantity, { least, greatest }: Band): "least" | "greatest" | undefined {
  if (exceeds(reading.value, greatest.value) && reading.sign !== "<") return "greatest";
  return fallsShort(reading.value, least.value) && reading.sign !== ">" ? "least" : undefined;
}

const span = ({ least, greatest }: Band): string => `${milliamps(least.value)} to ${milliamps(greatest.value)}`;

const named = {
  sinusoidal: "with sinusoidal a.c.",
  pulsating: "with pulsating d.c.",
  smooth: "with smooth d.c.",
} as const;
