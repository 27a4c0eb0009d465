import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, step } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { wordAt } from "../../model/fact-values.ts";
import { aboveElectrode, type LoopAgreement, loopAgreement } from "../../readings/loop.ts";
import { isOpenLoop } from "../../readings/open-conductor.ts";
import { combine } from "../../tables/source.ts";
import { slipWords } from "../common/dead-words.ts";
import { loopUncertainty } from "../common/loop-uncertainty.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { lineAfter } from "../common/writing.ts";
import { amount, factSpot, type Reporter, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-disagrees",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "Zs does not agree with the board's impedance plus R1+R2.",
  why: "Zs is the impedance of the board plus the circuit's own R1+R2. Well above: a joint is loosening, or R1+R2 was read at another point. Well below: metal in parallel, or one of the three figures is from another circuit or another day.",
  opens: true,
  clauses: ["411.4.4", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.41 Ω
  }
  live 2026-03-05 {
    Zs           1.05 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.41 Ω
  }
  live 2026-03-05 {
    Zs           0.74 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.61 Ω
  }
  live 2026-03-05 {
    Zs           0.64 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  parallel-path "Frame bolted to bonded steel"
  dead 2026-03-04 {
    R1+R2        0.61 Ω
  }
  live 2026-03-05 {
    Zs           0.64 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TT\nIpf 1.2 kA\nelectrode rod 62 Ω" },
      bad: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           618 Ω
    ^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           71 Ω
  }
}`,
    },
  ],
  check(study, report) {
    throughElectrode(study, report);
    const found = loopAgreement(study);
    if (!found?.expected || !found.board || !found.R1R2) return;
    const { Zs, R1R2, board, expected, tolerance, verdict } = found;
    if ((verdict !== "low" && verdict !== "high") || isOpenLoop(study, Zs.value)) return;
    const calculated = Zs.fact.provenance === "calculated";
    const range = noTripRange(study, found);
    const reason = calculated
      ? "calculate the sum again, or record which figures it was made from"
      : verdict === "high"
        ? highReason(range)
        : Math.abs(Zs.value - board.value) < practiceOf("loop-exact").value
          ? "it is the reading of the board; read it at the far point, or record metal in parallel with parallel-path"
          : "record metal in parallel with parallel-path";
    const after = study.facts.one("device") ?? study.facts.one("cable");
    const meter = loopUncertainty(study, found);
    const by = Math.abs(Zs.value - expected.value) - tolerance.value;
    report(factSpot(Zs.fact), {
      message: `Zs ${found.atMost ? "<" : ""}${ohms(Zs.value)} is ${verdict === "high" ? "above" : "below"} the ${ohms(expected.value)} that ${board.name} and R1+R2 give: ${reason}.${slipWords(Zs.value, expected.value)}${beyondTolerance(meter, by)}`,
      value: amount(Zs.value, "Ω"),
      ...(range === "stated" ? { severity: "information" as const } : {}),
      steps: [...expected.steps, ...tolerance.steps, ...uncertaintySteps(meter)],
      source: combine(expected.source, tolerance.source),
      related: [
        { spot: factSpot(R1R2.fact), message: `R1+R2 ${ohms(R1R2.value)}.` },
        { spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` },
      ],
      fixes:
        verdict === "low" && after && !calculated
          ? [lineAfter(after, 'parallel-path "…"', "Record a parallel path")]
          : [],
    });
  },
});

/** Whether what is too much may come from a no-trip range: the line says so, or an RCD is in the loop and nothing is said. */
function noTripRange(study: WayStudy, { Zs, expected, verdict }: LoopAgreement): "stated" | "possible" | undefined {
  const excess = verdict === "high" && expected ? Zs.value - expected.value : Number.POSITIVE_INFINITY;
  if (exceeds(excess, practiceOf("loop-no-trip").value)) return undefined;
  const written = wordAt(Zs.fact, "method");
  if (written === "no-trip") return "stated";
  return written === undefined && study.rcds.length > 0 && Zs.fact.provenance === "measured" ? "possible" : undefined;
}

function highReason(range: "stated" | "possible" | undefined): string {
  const most = ohms(practiceOf("loop-no-trip").value);
  if (range === "stated")
    return `a no-trip range may read up to ${most} high behind an RCD, so confirm it with the sum of Zdb and R1+R2, or with the full test current`;
  const joint = "look for a loose joint, or R1+R2 read at a nearer point";
  return range === "possible"
    ? `if it was read on a no-trip range, which may read up to ${most} high, write \`no-trip\` behind it; else ${joint}`
    : joint;
}

/** An electrode's resistance changes with the weather, so only a multiple of it is reported. */
function throughElectrode(study: WayStudy, report: Reporter): void {
  const found = aboveElectrode(study);
  if (!found) return;
  const { Zs, electrode, most, share, network } = found;
  report(factSpot(Zs.fact), {
    message: `Zs ${ohms(Zs.value)} is far above the ${ohms(electrode.value)} of the electrode: look for a poor joint in the cpc or earthing conductor.`,
    value: amount(Zs.value, "Ω"),
    limit: amount(most, "Ω"),
    severity: "information",
    steps: [
      ...share.steps,
      ...network.steps,
      step("most", `${share.value} × ${ohms(electrode.value)} + ${ohms(network.value)} + R1+R2`, ohms(most)),
    ],
    source: combine(share.source, network.source),
    related: [{ spot: factSpot(electrode.fact), message: `Electrode resistance: ${ohms(electrode.value)}.` }],
  });
}
