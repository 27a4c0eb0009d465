import { plain, squareMillimetres } from "../../calc/result.ts";
import { type ProtectiveNeed, protectiveNeed } from "../../circuit/protective.ts";
import { rewrittenLine } from "../../circuit/rewritten.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { containmentRule } from "../common/containments.ts";
import { amount, amountOf, factSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/shared-cpc-too-small",
  severity: "error",
  since: "0.1",
  title: "A shared protective conductor is too small for one of its circuits.",
  why: "A protective conductor that several circuits share has to carry the fault current of each, so the circuit that needs the largest decides its size. Draw in a larger one, or give the circuit its own.",
  clauses: ["543.1.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    Ipf          1.2 kA
  }
  board A "Board" {
    fed-from     supply
    containment C1 conduit 32 mm length 6 m bends 1
    way 1 radial "Lights" {
      device       BS EN 60898 B6 6 kA
      cable        singles  line 1.5 mm²  cpc 1.0 mm²
      route        method B  grouped 2  in C1
      length       12 m
    }
    way 2 radial "Oven" {
      device       BS 88-2 63 A
      cable        singles  line 16 mm²  cpc 6 mm²
      route        method B  grouped 2  in C1  carries line neutral
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
      length       12 m
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    Ipf          1.2 kA
  }
  board A "Board" {
    fed-from     supply
    containment C1 conduit 32 mm length 6 m bends 1
    way 1 radial "Lights" {
      device       BS EN 60898 B6 6 kA
      cable        singles  line 1.5 mm²  cpc 1.0 mm²
      route        method B  grouped 2  in C1  carries line neutral
      length       12 m
    }
    way 2 radial "Oven" {
      device       BS 88-2 63 A
      cable        singles  line 16 mm²  cpc 10 mm²
      route        method B  grouped 2  in C1
      length       12 m
    }
  }
}`,
    },
  ],
  judge({ sharedCpc, name }, report) {
    if (!sharedCpc) return;
    const { borrowers, lenders, largest } = sharedCpc;
    for (const { study, route } of borrowers) {
      const found = needWith(study, largest);
      // By the table a smaller one may still be shown to be enough.
      if (!found || found.method === "table" || largest >= found.need.value) continue;
      report(factSpot(route), {
        message: `Way ${study.way.id} has no cpc of its own in ${name}: it needs ${plain(found.need.value)} mm², and the largest to share there is ${squareMillimetres(largest)}.`,
        value: amount(largest, "mm²"),
        limit: amountOf(found.need),
        least: true,
        steps: found.need.steps,
        source: found.need.source,
        related: lenders.flatMap(({ way, cable }) =>
          cable?.cpc === undefined
            ? []
            : [{ spot: factSpot(cable.fact), message: `Way ${way.id} has a ${squareMillimetres(cable.cpc)} cpc.` }],
        ),
      });
    }
  },
});

/** What the circuit requires of the protective conductor it actually has, whatever its own cable line states. */
function needWith(study: WayStudy, size: number): ProtectiveNeed | undefined {
  const { cable } = study;
  const { line, cpc } = cable?.fact.args ?? {};
  if (!cable || !line) return undefined;
  const text = `${plain(size)} mm²`;
  const edit = cpc
    ? { start: cpc.start, end: cpc.end, text }
    : { start: line.end, end: line.end, text: ` cpc ${text}` };
  const trial = rewrittenLine(study, cable.fact, [edit]);
  return trial && protectiveNeed(trial);
}
