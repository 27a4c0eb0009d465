import { declaredImpedance } from "../../calc/supply-declared.ts";
import { studySupply } from "../../circuit/supply.ts";
import { quantityOf } from "../../model/values.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { shown } from "../common/dead-words.ts";
import { amount, amountOf, boardRule, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "loop/board-off-scale",
  severity: "error",
  since: "0.1",
  title: "The loop impedance of a board is off scale.",
  why: "With a metallic path back to the source a board reads a fraction of an ohm. Off scale, its protective conductor may be open and everything it feeds without an earth. Until it is read, no circuit of the board can be judged from it.",
  opens: true,
  clauses: ["411.4.2", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `live 2026-03-05 {
  Zdb          >20 Ω
               ^^^^^
}`,
      good: `live 2026-03-05 {
  Zdb          0.34 Ω
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `live 2026-03-05 {
  Zdb          <20 Ω
               ^^^^^
}`,
      good: `live 2026-03-05 {
  Zdb          <0.3 Ω
}`,
    },
  ],
  check({ board, context }, report) {
    const stated = [...liveOfBoard(context).map(({ facts }) => facts.one("Zdb")), board.head.facts.one("Zdb")];
    const fact = stated.find((one) => one !== undefined);
    const reading = fact && quantityOf(fact.args.value);
    if (!fact || !reading || reading.sign === "=") return;
    const { earthing } = studySupply(context);
    const metallic = declaredImpedance("TN-S");
    const isLarge = earthing !== "TT" && earthing !== "IT" && earthing !== undefined && reading.value >= metallic.value;
    // Below a figure that is small itself there is nothing to read more closely.
    if (reading.sign === "<" && !isLarge) return;
    const open = isLarge && reading.sign === ">";
    report(valueSpot(fact, reading), {
      message: open
        ? `Zdb ${shown(reading)} is off scale where ${earthing} gives a fraction of an ohm: is the protective conductor of the board open?`
        : `Zdb ${shown(reading)} is not a value its circuits can be judged from: read it on a ${reading.sign === "<" ? "lower" : "higher"} range.`,
      ...(open ? {} : { severity: "warning" as const }),
      value: amount(reading.value, "Ω"),
      ...(open ? { limit: amountOf(metallic), source: metallic.source } : {}),
    });
  },
});
