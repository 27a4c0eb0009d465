import { amps, plain, step } from "../../calc/result.ts";
import { currentOfAll, loadTerms } from "../../circuit/loads.ts";
import { unstatedInput } from "../../circuit/motor-input.ts";
import { ruleAlone } from "../../tables/source.ts";
import { listed } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

const sample = (load: string, factor = "") => `way 1 radial "Extractor" {
  device       BS EN 60898 D20 6 kA
  serves       motor
  load         ${load}
  overload     16 A${factor}
}`;

export default wayRule({
  id: "design/motor-input-not-stated",
  severity: "warning",
  since: "0.1",
  title: "The power of a motor is taken as what it draws, though its plate gives what it delivers.",
  why: "The rated output of a motor is the mechanical power at its shaft. What it draws is that divided by its efficiency, and its current grows again with the power factor: device, cable and relay that are chosen by the output alone are too small. The plate has the current, or the two figures it follows from.",
  clauses: ["311.1", "433.1.1"],
  examples: [
    {
      bad: sample('2.2 kW "Fan"\n  ^^^^^^^^^^^^^^^^^^^^^^^^^'),
      good: sample('2.2 kW  efficiency 84 % "Fan"', "\n  power-factor 83 %"),
    },
    {
      bad: sample('2.2 kW  efficiency 84 % "Fan"\n  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^'),
      good: sample('13.7 A "Fan"'),
    },
  ],
  check(study, report) {
    const unstated = study.isSpare ? undefined : unstatedInput(study);
    if (!unstated) return;
    const { load, missing } = unstated;
    const value = currentOfAll([load], study);
    const { name, terms } = loadTerms([load], study);
    report(factSpot(load), {
      message: `${plain((load.args.power?.value ?? 0) / 1000)} kW is what a motor delivers at its shaft, and it draws more than the ${amps(value)} calculated: state ${listed(missing)} from its plate, or the current there in place of the power.`,
      steps: [step(`I = ${name}, at least`, terms, amps(value))],
      source: ruleAlone({
        ref: "IEC 60034-1, rated output of a motor: the mechanical power at the shaft",
        standing: "quoted",
      }),
    });
  },
});
