import { onStandby } from "../../boards/standby.ts";
import { amps, ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { combine } from "../../tables/source.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

const sample = (Ze: string, device: string) => `wayfile 1
installation "Clinic" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          1.2 kA
    standby      "Diesel set"  Ze ${Ze}
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Cold store" {
      device       ${device}
      cable        multicore  line 6 mm²  cpc 6 mm²  cores 3
      length       20 m
      serves       appliance
    }
  }
}`;

export default wayRule({
  id: "loop/standby-over-limit",
  severity: "error",
  since: "0.1",
  title: "On its second source a circuit would not disconnect in time.",
  why: "A generator has a higher impedance than the network, and an inverter keeps up little more than its rated current: what opens in time on the one source may not on the other. Protection has to hold on each of them. A smaller device, a type B, or an RCD puts it right.",
  clauses: ["551.4.3", "411.3.2", "411.4.4"],
  examples: [
    {
      bad: sample("1.40 Ω", "BS EN 60898 B32 6 kA").replace(
        "B32 6 kA\n",
        `B32 6 kA\n      ${"^".repeat("device       BS EN 60898 B32 6 kA".length)}\n`,
      ),
      good: sample("0.60 Ω", "BS EN 60898 B32 6 kA"),
    },
    {
      bad: sample("1.40 Ω", "BS EN 61009 B32 6 kA 30 mA type A").replace(
        "30 mA type A\n",
        `30 mA type A\n      ${"^".repeat("device       BS EN 61009 B32 6 kA 30 mA type A".length)}\n`,
      ),
      good: sample("0.60 Ω", "BS EN 61009 B32 6 kA 30 mA type A"),
    },
  ],
  check(study, report) {
    const { device } = study;
    if (!device) return;
    for (const { source, value, limit, by, holds, byRcd } of onStandby(study)) {
      if (holds) continue;
      const name = source.args.what.value;
      const what =
        by === "loop"
          ? `the loop is ${ohms(value.value)}, above the ${ohms(limit.value)} of the ${deviceName(device)} device`
          : `at most ${amps(value.value, limit.value)} flows, and the ${deviceName(device)} device needs ${amps(limit.value, value.value)} to open in time`;
      report(factSpot(device.fact), {
        // An RCD that opens instead is what 411.4.5 allows: to be known, since all then rests on it.
        message: byRcd
          ? `On “${name}” only the RCD would disconnect: ${what}.`
          : `On “${name}” ${what}. Fit an RCD or a smaller device.`,
        ...(byRcd ? { severity: "information" as const } : {}),
        value: amountOf(value),
        limit: amountOf(limit),
        least: by === "current",
        steps: [...value.steps, ...limit.steps],
        source: combine(value.source, limit.source),
        related: [{ spot: factSpot(source), message: "The source that takes over." }],
      });
    }
  },
});
