import { studyRing } from "../../readings/ring.ts";
import { capital } from "../../text/words.ts";
import { endsRelated, listed, shown } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

const names = { r1: "line", rn: "neutral", r2: "protective conductor" } as const;

export default wayRule({
  id: "ring/open-conductor",
  severity: "error",
  compares: true,
  since: "0.1",
  title: "A conductor of a ring reads open end to end.",
  why: "An open ring is two radials on a device too large for either: the cable can burn before it trips. With the circuit isolated, test half the ring at a time from a point in the middle until the break is between two neighbours. Where two rings leave one board, first check whether their legs are interchanged.",
  opens: true,
  clauses: ["643.2.1", "433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 >99.9 Ω  rn 0.44 Ω  r2 0.73 Ω
                    ^^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const ring = studyRing(study);
    const { ends, values } = ring;
    const open = (["r1", "rn", "r2"] as const).filter((end) => values[end]?.open);
    if (!ends || open.length === 0) return;
    const [first] = open;
    const quantity = first && values[first]?.quantity;
    if (!quantity) return;
    // One break is one finding, however many conductors it goes through.
    const conductors = listed(open.map((end) => `the ${names[end]}`));
    const message =
      open.length === 3
        ? "Line, neutral and protective conductor are open end to end: the cable is cut or left out of a point, or a leg is of another circuit. Do not energise."
        : `${capital(conductors)} ${open.length === 1 ? "is" : "are"} open (${shown(quantity)} end to end): find the break before the circuit is energised.`;
    report(valueSpot(ends, quantity), {
      message,
      value: amount(quantity.value, "Ω"),
      related: endsRelated(ring).map((related) => ({
        ...related,
        message: `Open end to end: ${listed(open.map((name) => names[name]))}.`,
      })),
    });
  },
});
