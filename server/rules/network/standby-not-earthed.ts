import type { FactOf } from "../../model/values.ts";
import { quotedIn } from "../../tables/source.ts";
import { factSpot, installationRule, type Report } from "../frame/rule.ts";

const sample = (standby: string) => `wayfile 1
installation "Clinic" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-C-S
    Ze           0.20 Ω
    Ipf          1.2 kA
    ${standby}
  }
  board A "Main" {
    fed-from     supply
  }
}`;

const bad = 'standby      "Diesel set"  Ze 0.40 Ω  neutral linked';

export default installationRule({
  id: "network/standby-not-earthed",
  severity: "error",
  since: "0.1",
  title: "A second source takes over without an earth of its own.",
  why: "A generator or an inverter that takes over is cut off from the network, and the distributor’s earth may not be relied on then. Its neutral is connected to earth at one place while it supplies, and to an electrode of the consumer’s own: otherwise a fault to earth makes no current, and nothing trips.",
  clauses: ["551.4.3.2.1", "826.1.1.2.1"],
  examples: [
    {
      bad: sample(bad).replace(bad, `${bad}\n    ${"^".repeat(bad.length)}`),
      good: sample('standby      "Diesel set"  Ze 0.40 Ω  electrode 84 Ω  neutral linked'),
    },
    {
      bad: sample('standby      "Inverter"  Ze 0.40 Ω  electrode 84 Ω  neutral unlinked').replace(
        "neutral unlinked",
        `neutral unlinked\n    ${" ".repeat('standby      "Inverter"  Ze 0.40 Ω  electrode 84 Ω  neutral '.length)}${"^".repeat(8)}`,
      ),
      good: sample('standby      "UPS of the theatre"  Ze 0.40 Ω  neutral through'),
    },
  ],
  check({ supply }, report) {
    if (!supply || supply.isUnread("electrode")) return;
    for (const source of supply.all("standby")) {
      const found = wantingIn(source, supply.has("electrode"));
      if (found) report(found.spot, found.report);
    }
  },
});

type Standby = FactOf<"supply", "standby">;

const source = quotedIn("551.4.3.2.1");

/** What is stated to be missing is an error; what nothing is said of is asked. */
function wantingIn(standby: Standby, electrode: boolean) {
  const { neutral, electrode: own, what } = standby.args;
  const name = `“${what.value}”`;
  const { segment } = standby;
  const tell = (message: string, severity?: "warning"): Report => ({
    message,
    source,
    ...(severity ? { severity } : {}),
  });
  // The neutral of the supply stays connected: its earth is that of the network still.
  if (neutral?.value === "through") return undefined;
  if (neutral?.value === "unlinked")
    return {
      spot: { segment, start: neutral.start, end: neutral.end },
      report: tell(
        `The neutral of ${name} is not earthed while it supplies: no fault to earth would trip anything. Link it to earth at the source.`,
      ),
    };
  if (own || electrode) return undefined;
  return {
    spot: factSpot(standby),
    report: neutral
      ? tell(
          `Without the network nothing earths ${name}: fit an electrode of the consumer’s own, and write it with its resistance.`,
        )
      : tell(
          `How ${name} is earthed while it supplies is not stated: write its electrode and neutral linked, or neutral through for a UPS.`,
          "warning",
        ),
  };
}
