import { amps, relation, squareMillimetres } from "../../calc/result.ts";
import { sizeFor } from "../../circuit/overload.ts";
import { workOf } from "../../circuit/supply.ts";
import { isTooHot, terminalHeat } from "../../circuit/terminals.ts";
import { inPlaceOf, lineAfter } from "../common/writing.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/terminals-too-hot",
  severity: "warning",
  since: "0.1",
  title: "A 90 °C cable is loaded beyond what 70 °C terminals withstand.",
  why: "The cable itself is made for 90 °C, but the switch or breaker it ends in seldom is: its terminals loosen and char. Size the cable by the 70 °C table, or record that both ends are made for more.",
  clauses: ["512.1.5", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 C32 6 kA
  cable        armoured 90 °C  line 2.5 mm²  cpc 2.5 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  route        clipped  method C
  Ib           30 A
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 C32 6 kA
  cable        armoured 90 °C  line 4 mm²  cpc 4 mm²
  route        clipped  method C
  Ib           30 A
}`,
    },
    {
      bad: `way 1 radial "Furnace" {
  device       BS EN 60898 C63 6 kA
  cable        singles 90 °C  line 10 mm²  cpc 10 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  route        conduit 32 mm  method B
  Ib           60 A
}`,
      good: `way 1 radial "Furnace" {
  device       BS EN 60898 C63 6 kA
  cable        singles 90 °C  line 10 mm²  cpc 10 mm²
  route        conduit 32 mm  method B
  Ib           60 A
  terminals    90 °C
}`,
    },
  ],
  check(study, report) {
    const heat = terminalHeat(study);
    const { cable } = study;
    if (!heat || !cable || !isTooHot(heat)) return;
    const { current, stated, limit } = heat;
    const size = sizeFor(study, current, { hottest: 70 });
    const line = cable.fact.args.line;
    const known = workOf(study) === "existing" || !stated;
    report(factSpot(cable.fact), {
      message: `${heats(current, stated)} the conductors above 70 °C: ${size ? `fit ${squareMillimetres(size)}, or ` : ""}write terminals 90 °C if both ends are made for it.`,
      value: amount(current, "A"),
      limit: amountOf(limit),
      steps: [...limit.steps, relation("Ib ≤ Iz at 70 °C", amps(current, limit.value), amps(limit.value, current))],
      source: { ...limit.source, ref: "BS 7671:2018+A2:2022, 512.1.5 and the notes to Tables 4E1A to 4E4A" },
      ...(known ? { severity: "information" as const } : {}),
      related: [
        {
          spot: factSpot(study.designCurrent?.fact ?? study.device?.fact ?? cable.fact),
          message: `Current used: ${amps(current)}.`,
        },
      ],
      fixes: [
        ...(size && line ? [inPlaceOf(line, `${size} mm²`, `Make the line ${squareMillimetres(size)}`)] : []),
        lineAfter(cable.fact, "terminals 90 °C"),
      ],
    });
  },
});

const heats = (current: number, stated: boolean): string =>
  stated ? `The design current of ${amps(current)} heats` : `The ${amps(current)} the device allows may heat`;
