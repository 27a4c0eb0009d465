import { plain, volts } from "../../calc/result.ts";
import { originSupply } from "../../circuit/supply.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

const sample = (U0: string, mark = "") => `wayfile 1
installation "Yard" {
  standard     BS 7671:2018+A2:2022
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
  id: "network/voltage-not-judged",
  severity: "warning",
  since: "0.1",
  title: "A supply of this voltage is not judged here.",
  why: "Public supplies of 230 V and reduced low voltage (411.8: 55 V to earth, or 63.5 V of three phases) are judged. Of SELV and PELV sources, separation and other voltages no loop, time, drop or RCD is judged: no finding is no approval.",
  clauses: ["411.7", "411.8", "413", "414"],
  examples: [
    { bad: sample("110 V", "\n                 ^^^^^"), good: sample("55 V") },
    { bad: sample("48 V", "\n                 ^^^^"), good: sample("230 V") },
  ],
  check({ supply }, report) {
    const fact = supply?.one("U0");
    if (!fact || originSupply(supply).kind !== "other") return;
    const { value } = fact.args;
    // Of site supplies the voltage that is spoken of is the one between lines.
    const half = value.value / 2;
    const site = originSupply(supply).threePhase ? value.value / Math.sqrt(3) : half;
    const meant =
      value.value > 100 && value.value < 120 ? ` If it is a site supply, U0 to earth is ${plain(site, 1)} V.` : "";
    report(valueSpot(fact, value), {
      message: `Loops, times, drops and RCDs of a supply of ${volts(value.value)} to earth are not judged here.${meant}`,
    });
  },
});
