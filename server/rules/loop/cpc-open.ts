import { ohms, relation } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Fact, type Quantity, quantityOf } from "../../model/values.ts";
import { readOnLines } from "../../readings/lines.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { standingLoopPoints } from "../../readings/loop-points.ts";
import { isOpenLoop } from "../../readings/open-conductor.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

const { openLeast } = deadTestPractice;

export default wayRule({
  id: "loop/cpc-open",
  severity: "error",
  since: "0.1",
  title: "The protective conductor is open: a loop this high comes back another way.",
  why: "The cable of a circuit comes to a few ohms at most. A TN loop of tens or hundreds of ohms is closed through pipes, a damp wall or the ground, and not by the protective conductor: exposed metal is then held by one RCD alone, and by nothing once what carries it dries out or is replaced.",
  opens: true,
  clauses: ["411.3.1.1", "411.4.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Boiler" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           180 Ω
                 ^^^^^
  }
}`,
      good: `way 1 radial "Boiler" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           1.80 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Yard lights" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    at P1        Zs 0.62 Ω
    at P2        Zs 64 Ω
                    ^^^^
  }
}`,
      good: `way 1 radial "Yard lights" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    at P1        Zs 0.62 Ω
    at P2        Zs 0.64 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA" },
      bad: `way 1 radial "Summer house" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           84 Ω
                 ^^^^
  }
}`,
      good: `way 1 radial "Summer house" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  earthing     TT
  electrode    rod 82 Ω
  live 2026-03-05 {
    Zs           84 Ω
  }
}`,
    },
  ],
  check(study, report) {
    for (const { where, fact, Zs } of loopsOf(study)) {
      // What nothing at all disconnects is reported as that.
      if (Zs.sign !== "=" || !isOpenLoop(study, Zs.value) || !isCovered(study, Zs.value)) continue;
      report(valueSpot(fact, Zs), {
        message: `Zs ${ohms(Zs.value)}${where}: the protective conductor is open. No cable of a circuit comes to ${ohms(openLeast.value)}, so this came back through other metal or the ground. Find the break before it is used; if it has an electrode of its own, write earthing TT.`,
        value: amount(Zs.value, "Ω"),
        limit: amount(openLeast.value, "Ω"),
        steps: [relation("Zs ≤ the most a cable comes to", ohms(Zs.value), ohms(openLeast.value))],
        source: openLeast.source,
      });
    }
  },
});

/** Whether the RCD would disconnect it, or it is not known what has to. */
const isCovered = (study: WayStudy, Zs: number): boolean =>
  study.disconnection?.by !== "overcurrent" || rcdDisconnects(study, Zs) !== undefined;

interface Loop {
  readonly where: string;
  readonly fact: Fact;
  readonly Zs: Quantity;
}

/** The circuit's own, and those of points and lines beside it. */
function loopsOf(study: WayStudy): Loop[] {
  if (study.isSpare) return [];
  const own = quantityOf(study.Zs?.value);
  return [
    ...(study.Zs && own ? [{ where: "", fact: study.Zs.fact, Zs: own }] : []),
    ...standingLoopPoints(study).map(({ name, fact, Zs }) => ({ where: ` at ${name}`, fact, Zs })),
    ...readOnLines(study.Zs?.fact).map(({ name, fact, reading }) => ({ where: ` on ${name}`, fact, Zs: reading })),
  ].filter(({ Zs }, at, all) => all.findIndex((one) => one.Zs === Zs) === at);
}
