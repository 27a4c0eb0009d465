import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { kiloamps } from "../../calc/result.ts";
import { boardFaults, type FaultAt, wayFaults } from "../../circuit/faults.ts";
import { studySupply } from "../../circuit/supply.ts";
import { upstreamFaults } from "../../readings/fault-check.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "fault/rises-downstream",
  severity: "warning",
  since: "0.1",
  title: "A board or circuit has a greater fault current than what feeds it.",
  why: "A cable can only reduce a fault current. One of the two figures belongs elsewhere, and devices were chosen by it.",
  clauses: ["434.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Board" {
    fed-from     supply
    Ipf          2.4 kA
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Board" {
    fed-from     supply
    Ipf          1.1 kA
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    PSCC         1.2 kA
    PEFC         0.8 kA
  }
  board A "Board" {
    fed-from     supply
    Ipf          2.4 kA
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    PSCC         1.2 kA
    PEFC         0.8 kA
  }
  board A "Board" {
    fed-from     supply
    Ipf          1.1 kA
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TN-S\nIpf 1.2 kA" },
      bad: `way 1 radial "Pump" {
  live 2026-03-05 {
    Ipf          7 kA
    ^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  live 2026-03-05 {
    Ipf          0.7 kA
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    const above = upstreamFaults(context);
    const atBoard = boardFaults(board.head.facts);
    const share = practiceOf("fault-rise");
    const far = practiceOf("fault-rise-far");
    const uncertainty = practiceOf("loop-below");
    const { U0 } = studySupply(context);
    const rises = [
      ...atBoard.map((own) => ({ own, where: "at this board", below: above })),
      ...studies.flatMap((study) =>
        wayFaults(study).map((own) => ({
          own,
          where: `on way ${study.way.id}`,
          below: atBoard.length > 0 ? atBoard : above,
        })),
      ),
    ];
    for (const { own, where, below } of rises) {
      const same = mostAbove(own, below);
      if (!same || !exceeds(own.value, share.value * same.value)) continue;
      // Where loops are small a hundredth of an ohm is a thousand amperes.
      const gap = U0 / same.value - U0 / own.value;
      if (!exceeds(gap, uncertainty.value) && !exceeds(own.value, far.value * same.value)) continue;
      report(factSpot(own.fact), {
        message: `${own.name} ${kiloamps(own.value)} ${where} is above the ${named(same, own)}${kiloamps(same.value)} upstream: check both, since a cable only reduces a fault current.`,
        value: amount(own.value, "A"),
        limit: amount(same.value, "A"),
        steps: share.steps,
        source: share.source,
        related: [{ spot: factSpot(same.fact), message: `Fault current upstream: ${kiloamps(same.value)}.` }],
      });
    }
  },
});

/** The figure upstream that this one cannot pass: its own kind, or what is the greatest there whatever its kind. */
function mostAbove({ name }: FaultAt, above: readonly FaultAt[]): FaultAt | undefined {
  const of = (wanted: FaultAt["name"]) => above.find((one) => one.name === wanted);
  if (name !== "Ipf") return of(name) ?? of("Ipf");
  const [live, earth] = [of("PSCC"), of("PEFC")];
  return of("Ipf") ?? (live && earth && earth.value > live.value ? earth : live);
}

const named = (one: FaultAt, own: FaultAt): string => (one.name === own.name ? "" : `${one.name} of `);
