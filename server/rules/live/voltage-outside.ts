import { exceeds, fallsShort } from "../../calc/compare.ts";
import { plain, step, volts } from "../../calc/result.ts";
import { supplyVoltage } from "../../calc/supply-voltage.ts";
import { isSelvOrPelv } from "../../circuit/circuit-kind.ts";
import { originSupply, type SupplyStudy, testsOf } from "../../circuit/supply.ts";
import { type Fact, type Facts, quantityOf, readingAt } from "../../model/values.ts";
import { withSign } from "../common/dead-words.ts";
import { amount, amountOf, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

/** A three-phase circuit may be measured from line to line. */
const lineToLine = Math.sqrt(3);

/** Half-way in proportion from line to neutral to line to line: what is more is nearer the latter. */
const midway = Math.sqrt(lineToLine);

export default installationRule({
  id: "live/voltage-outside",
  severity: "warning",
  since: "0.1",
  title: "A voltage is outside the limits of the supply.",
  why: "A voltage too high shortens the life of everything connected, and may mean a lost neutral. One too low means a long cable, a poor joint, or a fault of the supply. Measure at the origin as well.",
  clauses: ["313.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  live 2026-03-05 {
    voltage      261 V
                 ^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  live 2026-03-05 {
    voltage      238 V
  }
}`,
    },
  ],
  check({ supply }, report) {
    const known = originSupply(supply);
    checkFact(latestAtOrigin(supply), known, known.threePhase, "", report);
  },
  checkBoard({ studies }, report) {
    for (const study of studies) {
      if (isSelvOrPelv(study)) continue;
      const { liveTests, supply, threePhase } = study;
      const remedy = " Measure at the origin to tell the supply from the circuit.";
      const fact = liveTests.map(({ facts }) => facts.one("voltage")).find((one) => quantityOf(readingAt(one)));
      checkFact(fact, supply, threePhase || supply.threePhase, remedy, report);
    }
  },
});

function latestAtOrigin(supply: Facts<"supply"> | undefined): Fact | undefined {
  const tests = testsOf<"supplyLive">(supply?.all("live") ?? []);
  return tests.map(({ facts }) => facts?.one("voltage")).find((fact) => fact !== undefined);
}

function checkFact(
  fact: Fact | undefined,
  { U0, kind, voltage }: SupplyStudy,
  threePhase: boolean,
  remedy: string,
  report: Reporter,
): void {
  const value = quantityOf(readingAt(fact));
  if (!fact || !value) return;
  const { least, greatest } = supplyVoltage(U0);
  const within = (factor: number) =>
    !fallsShort(value.value, least.value * factor) && !exceeds(value.value, greatest.value * factor);
  if (within(1) || (threePhase && within(lineToLine))) return;
  if (kind === "reduced" && within(voltage / U0)) return;
  // Above what one line may have and on three lines, it was read between two of them.
  const factor = threePhase && value.value > greatest.value * midway ? lineToLine : 1;
  const over = value.value > greatest.value * factor;
  const limit = over ? greatest : least;
  const bound = limit.value * factor;
  const steps = factor === 1 ? [] : [step("between lines", `√3 × ${volts(limit.value)}`, volts(bound))];
  report(valueSpot(fact, value), {
    message: `${withSign(value, volts)}${factor === 1 ? "" : " between lines"} is ${over ? "above the maximum" : "below the minimum"} of ${plain(bound, 1)} V for a ${volts(U0)} supply${factor === 1 ? "" : " between lines"}.${over ? "" : remedy}`,
    value: amount(value.value, "V"),
    limit: { ...amountOf(limit), amount: bound },
    least: !over,
    steps: [...limit.steps, ...steps],
    source: limit.source,
  });
}
