import { rcdsAt } from "../../boards/board-rcds.ts";
import { fallsShort } from "../../calc/compare.ts";
import { residuals } from "../../calc/minimum-size.ts";
import { practiceOf } from "../../calc/practice.ts";
import { milliamps, plain, remark, step } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/no-selectivity",
  severity: "information",
  since: "0.1",
  title: "Two RCDs in series may trip together.",
  why: "A fault on one circuit then disconnects everything downstream of the upstream device. A time-delayed RCD upstream, of at least three times the rating, lets the nearer one trip first.",
  clauses: ["536.4.1.4"],
  examples: [
    {
      setting: { board: "fed-from supply\nmain-switch BS EN 61008 80 A 30 mA type A" },
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
}`,
    },
    {
      setting: { board: "fed-from supply\nmain-switch BS EN 61008 80 A 100 mA type A" },
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
}`,
    },
  ],
  check({ studies }, report) {
    for (const { rcd: own, ways } of rcdsAt(studies)) {
      const [first] = ways;
      const all = first?.rcds ?? [];
      const above = all.slice(all.findIndex(({ fact }) => fact === own.fact) + 1);
      const ratio = practiceOf("rcd-ratio");
      const least = ratio.value * own.sensitivity;
      const rival = above.find(({ delayed, sensitivity }) => !delayed || fallsShort(sensitivity, least));
      if (!rival) continue;
      const which = own.at === "board" || own.at === "main-switch" ? `The ${rcdName(own)}` : "This RCD";
      const together = !rival.delayed || rival.sensitivity <= own.sensitivity;
      const made = residuals.find((residual) => !fallsShort(residual, least));
      const wanted = `fit a delayed one of at least ${milliamps(made ?? least)}`;
      report(factSpot(own.fact), {
        message: `${which} and the ${rcdName(rival)} upstream ${together ? "trip" : "may trip"} together: upstream, ${wanted}.`,
        // One that is large enough and not delayed has no figure that falls short.
        ...(fallsShort(rival.sensitivity, least)
          ? { value: amount(rival.sensitivity, "A"), limit: amount(least, "A"), least: true }
          : {}),
        steps: [
          step("IΔn upstream ≥ ratio × IΔn", `${plain(ratio.value)} × ${milliamps(own.sensitivity)}`, milliamps(least)),
          remark(rival.delayed ? "the one upstream is delayed" : "the one upstream is not delayed"),
        ],
        source: ratio.source,
        related: [{ spot: factSpot(rival.fact), message: `Upstream: ${rcdName(rival)}.` }],
      });
    }
  },
});
