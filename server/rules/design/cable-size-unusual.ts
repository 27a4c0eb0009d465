import { isStandardSize, nextSizeUp } from "../../calc/minimum-size.ts";
import { squareMillimetres } from "../../calc/result.ts";
import { standardSizes } from "../../tables/standard-values.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { inPlaceOf, slipOf } from "../common/writing.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/cable-size-unusual",
  severity: "warning",
  since: "0.1",
  title: "A conductor size is not a standard size.",
  why: "A wrong digit here shifts current-carrying capacity, voltage drop and every expected reading. Record imperial cable as the nearest metric size, with a note.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  cable        singles  line 25 mm²  cpc 15 mm²
                                         ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  cable        singles  line 25 mm²  cpc 16 mm²
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (!cable) return;
    const { line, neutral, cpc } = cable.described.args;
    const row = rowOf(standardSizes, { csa: 2.5 });
    // The bars of a trunking have what section their maker gives them.
    const cores = cable.construction === "busbar-trunking" ? [cpc] : [line, neutral, cpc];
    for (const size of cores) {
      if (!size || isStandardSize(size.value) || !row) continue;
      const own = cable.described === cable.fact;
      const next = nextSizeUp(size.value);
      report(own ? valueSpot(cable.fact, size) : factSpot(cable.fact), {
        message: `${squareMillimetres(size.value)} is not a standard conductor size${next ? `: the next is ${squareMillimetres(next)}` : ""}.`,
        value: amount(size.value, "mm²"),
        source: sourceOf(standardSizes, row, "csa"),
        fixes: next && own ? [slipOf(inPlaceOf(size, `${next} mm²`, `Make it ${squareMillimetres(next)}`))] : [],
      });
    }
  },
});
