import { ohms, plain, step } from "../../calc/result.ts";
import { belowElectrode } from "../../readings/loop.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

const sample = (Zs: string) => `wayfile 1
installation "House and workshop" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-C-S
    Ze           0.22 Ω
  }
  board W "Workshop" {
    fed-from     supply
    earthing     TT
    electrode    rod 140 Ω
    way 1 radial "Lathe" {
      device       BS EN 61009 B16 6 kA 30 mA type A
      live 2026-03-05 {
        Zs           ${Zs}
      }
    }
  }
}`;

export default wayRule({
  id: "loop/zs-below-electrode",
  severity: "warning",
  since: "0.1",
  title: "Zs is far below the electrode that should be the only earth.",
  why: "A loop through an electrode of its own has at least the resistance of that electrode. One that reads a fraction of it goes another way: the armour or the cpc of the feeder still joins the building to the earth of the supply, so that a broken neutral of the distributor makes its metal live; or pipes and steel lie in parallel.",
  opens: true,
  clauses: ["411.5.1", "542.1"],
  examples: [
    {
      bad: sample("0.74 Ω").replace("0.74 Ω\n", "0.74 Ω\n        ^^^^^^^^^^^^^^^^^^^\n"),
      good: sample("141 Ω"),
    },
  ],
  check(study, report) {
    const found = belowElectrode(study);
    if (!found) return;
    const { Zs, electrode, least, share } = found;
    report(factSpot(Zs.fact), {
      message: `Zs ${ohms(Zs.value)} is far below the ${ohms(electrode.value)} of the electrode, so another earth is connected: see that the armour or cpc of its feeder is not joined to its earth here, or record metal in parallel with parallel-path.`,
      value: amount(Zs.value, "Ω"),
      limit: amount(least, "Ω"),
      least: true,
      steps: [...share.steps, step("least", `${ohms(electrode.value)} / ${plain(share.value)}`, ohms(least))],
      source: share.source,
      related: [{ spot: factSpot(electrode.fact), message: `Electrode resistance: ${ohms(electrode.value)}.` }],
    });
  },
});
