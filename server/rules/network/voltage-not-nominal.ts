import { volts } from "../../calc/result.ts";
import { hasOwnSource, originSupply } from "../../circuit/supply.ts";
import type { Installation } from "../../model/installation.ts";
import { editionDates } from "../../readings/edition-dates.ts";
import { sixteenthId } from "../../tables/editions.ts";
import { formerVoltage, nominalVoltage, supplyValues } from "../../tables/supply.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, installationRule, valueSpot } from "../frame/rule.ts";

const sample = (U0: string, mark = "", standard = "BS 7671:2018+A2:2022") => `wayfile 1
installation "Yard" {
  standard     ${standard}
  stage        design
  supply {
    earthing     TN-S
    U0           ${U0}${mark}
  }
  board A "Board" {
    fed-from     supply
  }
}`;

export default installationRule({
  id: "network/voltage-not-nominal",
  severity: "warning",
  since: "0.1",
  title: "A measured voltage stands as the nominal voltage of a public supply.",
  why: "The limits of Zs, times and drops rest on the nominal voltage to earth, which of a public supply is 230 V whatever a meter shows on the day. A higher figure would allow a higher loop than the tables do.",
  clauses: ["313.1"],
  examples: [
    { bad: sample("241 V", "\n                 ^^^^^"), good: sample("230 V") },
    { bad: sample("240 V", "\n                 ^^^^^"), good: sample("240 V", "", "BS 7671:2001") },
  ],
  check(installation, report) {
    const { supply } = installation;
    const fact = supply?.one("U0");
    if (!fact || originSupply(supply).kind !== "public" || hasOwnSource(supply)) return;
    const { value } = fact.args;
    const nominal = nominalVoltage.toEarth;
    const isFormer = value.value === formerVoltage.toEarth;
    // What was recorded, or is judged, by the voltage of its time is right as it stands.
    if (value.value === nominal || (isFormer && ofFormerTime(installation))) return;
    report(valueSpot(fact, value), {
      message: isFormer
        ? `${volts(value.value)} was the nominal voltage until ${formerVoltage.until.slice(0, 4)}. It is ${volts(nominal)}, on which the limits of Zs of this edition rest: write ${volts(nominal)}.`
        : `U0 of a public supply is its nominal ${volts(nominal)}, on which the limits of Zs rest: write ${volts(nominal)}, and the ${volts(value.value)} that was read as voltage in a block of live tests.`,
      value: amount(value.value, "V"),
      source: { ref: `${supplyValues.ref}, nominal voltage`, standing: "quoted" },
      fixes: [inPlaceOf(value, volts(nominal), `Write ${volts(nominal)}`)],
    });
  },
});

/** Whether the tables it is judged by are for the former voltage, or its last test was made while that was the nominal one. */
function ofFormerTime(installation: Installation): boolean {
  const { edition } = installation;
  if (!edition) return false;
  const { lastTest } = editionDates(installation, edition);
  return edition.id === sixteenthId || (lastTest !== undefined && lastTest < formerVoltage.until);
}
