import { protectiveOn, standbyOfWay } from "../../boards/standby.ts";
import { squareMillimetres } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { suffices } from "../../circuit/protective.ts";
import { protectiveAtFault } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

const sample = (cpc: string) => `wayfile 1
installation "Farm shop" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    Ze           0.05 Ω
    Ipf          4.6 kA
    standby      "Diesel set"  Ze 0.55 Ω
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Barn" {
      device       BS 88-2 63 A 80 kA gG
      feeds        B
      cable        singles  line 16 mm²  cpc ${cpc}
      route        conduit  method B
      length       12 m
    }
  }
  board B "Barn" {
    fed-from     A
  }
}`;

export default wayRule({
  id: "energy/standby-cpc-too-small",
  severity: "error",
  since: "0.1",
  title: "On its second source a protective conductor is too small for the fault.",
  why: "With less current a fuse takes longer, and the protective conductor takes up more energy than on the network. It has to withstand the fault on each source.",
  clauses: ["543.1.3", "551.4.1"],
  examples: [
    {
      bad: sample("4 mm²").replace("cpc 4 mm²\n", "cpc 4 mm²\n                                             ^^^^^\n"),
      good: sample("10 mm²"),
    },
  ],
  check(study, report) {
    const { cable, device } = study;
    if (!cable || !device?.rating || study.isSpare || !study.context.supply?.has("standby")) return;
    const before = protectiveAtFault(study);
    // What fails on the network is reported of that.
    if (before && !suffices(before)) return;
    for (const source of standbyOfWay(study)) {
      const found = protectiveOn(study, source);
      if (!found || suffices(found) || found.method === "table") continue;
      const { need, has, certain, of } = found;
      const spot = of === "armour" ? cable.fact.args.cpcBy : cable.fact.args.cpc;
      report(spot ? valueSpot(cable.fact, spot) : factSpot(cable.fact), {
        message: `On “${source.args.what.value}” ${of === "armour" ? "an armour" : "a cpc"} of ${squareMillimetres(has.value)} is too small: the fault that flows there needs ${squareMillimetres(need.value)} with the ${deviceName(device)} device.`,
        value: amountOf(has),
        limit: amountOf(need),
        least: true,
        steps: [...(of === "armour" ? has.steps : []), ...need.steps],
        source: combine(need.source, has.source),
        ...(certain ? {} : { severity: "warning" as const }),
        related: [{ spot: factSpot(source), message: "The source that takes over." }],
      });
    }
  },
});
