import { exceeds } from "../../calc/compare.ts";
import { insulationRule } from "../../calc/insulation.ts";
import { rcdTripBand } from "../../calc/rcd-time.ts";
import type { Calculated } from "../../calc/result.ts";
import { metered } from "../../calc/uncertainty.ts";
import { breakingOf } from "../../circuit/breaking.ts";
import { readingLimit } from "../../circuit/disconnection.ts";
import { greatestFault } from "../../circuit/faults.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import type { Context, Installation } from "../../model/installation.ts";
import { type Fact, type Quantity, quantityOf, readingAt } from "../../model/values.ts";
import { originElectrode } from "../../readings/electrode.ts";
import { boardInsulation, insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { loopPoints } from "../../readings/loop-points.ts";
import {
  deviceOnBoard,
  deviceOnWay,
  latestRcdTests,
  liveOfBoard,
  type TripFact,
  windowOf,
} from "../../readings/rcd-tests.ts";
import {
  anyStates,
  type Uncertainty,
  uncertaintyAmong,
  uncertaintyInTest,
  uncertaintyOnBoard,
  uncertaintyOnSupply,
  uncertaintyOnWay,
} from "../../readings/uncertainty.ts";
import { nearLimit, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, amountOf, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

interface Near {
  readonly name: string;
  readonly fact: Fact;
  readonly quantity: Quantity;
  readonly limit: Calculated;
  readonly which?: string;
  readonly uncertainty: Uncertainty | undefined;
  readonly least: boolean;
}

/** A reading that is within its limit, but by less than its uncertainty. One beyond it is for another check. */
function reportNearLimit({ name, fact, quantity, limit, which, uncertainty, least }: Near, report: Reporter): void {
  const left = least ? quantity.value - limit.value : limit.value - quantity.value;
  if (!uncertainty || left < 0 || !exceeds(uncertainty.value, left)) return;
  const unit = uncertainty.unit === "s" || uncertainty.unit === "A" ? uncertainty.unit : "Ω";
  const shown = `${name} ${metered(quantity.value, unit)}`;
  report(valueSpot(fact, quantity), {
    message: nearLimit(uncertainty, shown, least ? "over" : "under", metered(limit.value, unit)),
    value: amount(quantity.value, unit),
    limit: amountOf(limit, which),
    least,
    steps: [...limit.steps, ...uncertaintySteps(uncertainty)],
    source: limit.source,
  });
}

function nearLoop(study: WayStudy): Near[] {
  const { Zs, disconnection } = study;
  const quantity = Zs && quantityOf(Zs.value);
  if (!Zs || !quantity || !disconnection || study.isSpare) return [];
  return [
    {
      name: "Zs",
      fact: Zs.fact,
      quantity,
      ...readingLimit(disconnection),
      uncertainty: uncertaintyOnWay(study, Zs.fact, quantity),
      least: false,
    },
  ];
}

/** Each point is compared with the same limit; the one that was recorded as the circuit's Zs is reported as that. */
function nearPoints(study: WayStudy): Near[] {
  const { disconnection } = study;
  if (!disconnection || study.isSpare) return [];
  const written = quantityOf(study.Zs?.value)?.value;
  const others = loopPoints(study).filter(({ Zs }) => Zs.value !== written);
  return others.map(({ name, fact, Zs }) => ({
    name: `Zs at ${name}`,
    fact,
    quantity: Zs,
    ...readingLimit(disconnection),
    uncertainty: uncertaintyOnWay(study, fact, Zs),
    least: false,
  }));
}

function nearInsulation(study: WayStudy): Near[] {
  const limit = insulationLimit(study)?.minimum;
  const values = insulationOf(study)?.values ?? [];
  if (study.isSpare || !limit) return [];
  return values.map(({ pair, fact, quantity }) => ({
    name: pair,
    fact,
    quantity,
    limit,
    uncertainty: uncertaintyOnWay(study, fact, quantity),
    least: true,
  }));
}

function nearBoardInsulation(context: Context): Near[] {
  if (!context.edition) return [];
  const { minimum: limit } = insulationRule("up-to-500", context.edition);
  return (boardInsulation(context)?.values ?? []).map(({ pair, fact, quantity }) => ({
    name: `The board's ${pair}`,
    fact,
    quantity,
    limit,
    uncertainty: uncertaintyOnBoard(context, fact, quantity),
    least: true,
  }));
}

/** The device with the lowest breaking capacity decides: it is reported once, not by every device of the board. */
function nearBreaking(context: Context, studies: readonly WayStudy[]): Near[] {
  const fault = greatestFault(context);
  const quantity = fault && quantityOf(readingAt(fault.fact));
  const capacities = studies.flatMap((study) => {
    const backedUp = study.facts.one("device")?.args.class?.value === "back-up";
    return study.isSpare || backedUp || study.device?.breaking === undefined ? [] : (breakingOf(study) ?? []);
  });
  if (!fault || !quantity) return [];
  const [limit] = capacities.filter(({ value }) => value >= fault.value).toSorted((a, b) => a.value - b.value);
  if (!limit) return [];
  const uncertainty = uncertaintyOnBoard(context, fault.fact, quantity);
  return [{ name: fault.name, fact: fault.fact, quantity, limit, uncertainty, least: false }];
}

interface Ramp {
  readonly fact: TripFact;
  readonly rcd: Rcd | undefined;
}

function ramps(context: Context, studies: readonly WayStudy[]): Ramp[] {
  const onBoard = liveOfBoard(context).flatMap(({ facts }) =>
    facts.all("trip-current").map((fact) => ({ fact, rcd: deviceOnBoard(fact, context) })),
  );
  const onWays = studies.flatMap((study) => {
    const test = study.liveTests.find(({ facts }) => facts.has("trip-current"));
    return (test?.facts.all("trip-current") ?? []).map((fact) => ({ fact, rcd: deviceOnWay(fact, study) }));
  });
  return [...onBoard, ...onWays];
}

function nearTripCurrent(context: Context, studies: readonly WayStudy[]): Near[] {
  const tests = [...liveOfBoard(context), ...studies.flatMap(({ liveTests }) => liveTests)];
  return ramps(context, studies).flatMap(({ fact, rcd }) => {
    const quantity = quantityOf(fact.args.value);
    const band = rcd?.type && rcdTripBand(rcd.type, rcd.sensitivity, fact.args.waveform?.value);
    if (!quantity || !band) return [];
    const uncertainty = uncertaintyAmong(context.names, tests, fact, quantity);
    const own = { name: "Trip current", fact, quantity, uncertainty };
    const within = quantity.value <= band.greatest.value && quantity.value >= band.least.value;
    return within
      ? [
          { ...own, limit: band.greatest, least: false },
          { ...own, limit: band.least, least: true },
        ]
      : [];
  });
}

function nearElectrode(installation: Installation): Near[] {
  return originElectrode(installation).flatMap(({ fact, reading: quantity, weakest }): Near[] =>
    weakest
      ? [
          {
            name: "RA",
            fact,
            quantity,
            limit: weakest.limit,
            uncertainty: uncertaintyOnSupply(installation, fact, quantity),
            least: false,
          },
        ]
      : [],
  );
}

const meter =
  'instrument M1 "Multifunction tester" {\n  accuracy  loop 3 % 3 digits\n  accuracy  rcd-time 2 % 2 digits\n}';

export default installationRule({
  id: "instrument/within-uncertainty",
  severity: "information",
  since: "0.1",
  title: "A reading passes its limit by less than the uncertainty of the instrument.",
  why: "The true value may differ from the reading by the accuracy of the instrument. This close to the limit the reading alone does not prove compliance: a more accurate instrument, or a second method, settles it.",
  clauses: ["643.1"],
  examples: [
    {
      setting: { stage: "tested", before: meter },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 with M1 {
    Zs           1.06 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 with M1 {
    Zs           0.62 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", before: meter },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd          30 mA 1x 297 ms
                          ^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check(installation, report) {
    if (!anyStates(installation.names).accuracy) return;
    for (const near of nearElectrode(installation)) reportNearLimit(near, report);
  },
  checkBoard({ context, studies }, report) {
    if (!anyStates(context.names).accuracy) return;
    const ofWays = studies.flatMap((study) => [...nearLoop(study), ...nearPoints(study), ...nearInsulation(study)]);
    const ofBoard = [...nearBoardInsulation(context), ...nearBreaking(context, studies)];
    for (const near of [...ofWays, ...ofBoard, ...nearTripCurrent(context, studies)]) reportNearLimit(near, report);
    for (const test of latestRcdTests(context, studies)) {
      const limit = windowOf(test, context)?.greatest;
      const { fact, time } = test;
      if (!limit || !time) continue;
      const uncertainty = uncertaintyInTest(context.names, test.test, fact, time);
      reportNearLimit({ name: "Trip time", fact, quantity: time, limit, uncertainty, least: false }, report);
    }
  },
});
