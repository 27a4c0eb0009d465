import { exceeds } from "../../calc/compare.ts";
import { harmonicNeed } from "../../calc/harmonics.ts";
import { amps, percent, squareMillimetres } from "../../calc/result.ts";
import { capacityWith, sizeFor } from "../../circuit/overload.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "coordination/neutral-harmonics",
  severity: "warning",
  since: "0.1",
  title: "Third harmonics overload the neutral.",
  why: "Third harmonics of the three lines do not cancel: the neutral carries their sum, which with many electronic loads is more than a line carries, and nothing protects it. Use a larger cable, never a reduced neutral.",
  clauses: ["523.6.3", "524.2"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nphases three" },
      bad: `way 1 radial "Dimmer racks" {
  device       BS EN 60898 C32 6 kA
  phase        three
  cable        armoured 70 °C  line 6 mm²  neutral 4 mm²  cpc 6 mm²  cores 5
                                                   ^^^^^
  route        clipped  method C
  neutral-harmonics 30 %
  Ib           31 A
}`,
      good: `way 1 radial "Dimmer racks" {
  device       BS EN 60898 C32 6 kA
  phase        three
  cable        armoured 70 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        clipped  method C
  neutral-harmonics 30 %
  Ib           31 A
}`,
    },
    {
      setting: { supply: "earthing TN-S\nphases three" },
      bad: `way 1 radial "Dimmer racks" {
  device       BS EN 60898 C32 6 kA
  phase        three
  cable        armoured 70 °C  line 4 mm²  cpc 4 mm²  cores 5
                                    ^^^^^
  route        clipped  method C
  neutral-harmonics 50 %
  Ib           26 A
}`,
      good: `way 1 radial "Dimmer racks" {
  device       BS EN 60898 C32 6 kA
  phase        three
  cable        armoured 70 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        clipped  method C
  neutral-harmonics 50 %
  Ib           26 A
}`,
    },
  ],
  check(study, report) {
    const { cable, designCurrent, threePhase } = study;
    const fact = study.facts.one("neutral-harmonics");
    if (!fact || !cable || !designCurrent || !threePhase) return;
    const share = fact.args.value.value / 100;
    const { neutral, capacity: need } = harmonicNeed(designCurrent.value, share);
    // The neutral as a conductor of its own size, laid like the rest.
    const reduced = cable.neutral < cable.line;
    const capacity = reduced ? capacityWith(study, cable.neutral) : study.capacity?.value;
    if (!capacity || !exceeds(need.value, capacity.value)) return;
    const written = reduced ? cable.fact.args.neutral : cable.fact.args.line;
    const size = sizeFor(study, need.value, { from: reduced ? cable.neutral : cable.line });
    report(written ? valueSpot(cable.fact, written) : factSpot(cable.fact), {
      message: `With ${percent(fact.args.value.value)} of third harmonic the neutral carries ${amps(neutral.value)}: the cable must carry ${amps(need.value, capacity.value)}; ${squareMillimetres(reduced ? cable.neutral : cable.line)} carries ${amps(capacity.value, need.value)}.${size ? ` Fit ${squareMillimetres(size)}.` : ""}`,
      // What flows is more than the conductor carries, without the factor that guidance adds for its heat.
      ...(exceeds(neutral.value, capacity.value) ? { severity: "error" as const } : {}),
      value: amount(capacity.value, "A"),
      limit: amountOf(need),
      least: true,
      steps: [...need.steps, ...capacity.steps],
      source: combine(need.source, capacity.source),
      related: [{ spot: factSpot(fact), message: `Third harmonic ${percent(fact.args.value.value)}.` }],
      fixes: written && size ? [inPlaceOf(written, `${size} mm²`, `Make it ${squareMillimetres(size)}`)] : [],
    });
  },
});
