import { ohms, relation } from "../../calc/result.ts";
import { declaredImpedance } from "../../calc/supply-declared.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { electrodeOf } from "../../readings/loop.ts";
import { amount, amountOf, boardRule, factSpot } from "../frame/rule.ts";

const sample = (Zs: string) => `wayfile 1
installation "Farm cottage" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TT
    electrode    rod 180 Ω
  }
  board A "Hall" {
    fed-from     supply
    way 1 radial "Oven" {
      device       BS EN 61009 B32 6 kA 30 mA type A
      live 2026-03-05 {
        Zs           ${Zs}
      }
    }
  }
}`;

export default boardRule({
  id: "loop/low-for-tt",
  severity: "information",
  since: "0.1",
  title: "A loop of a TT installation is as low as one with a metallic return.",
  why: "Through an electrode a fault returns by the ground, which takes far more than an ohm. A loop of a fraction of one goes another way: by bonded pipes, which can be replaced by plastic any day; by a neutral that is joined to earth inside, where no RCD downstream works as it should; or the supply is not TT.",
  opens: true,
  clauses: ["312.2", "411.5.1"],
  examples: [
    {
      bad: sample("0.62 Ω").replace("0.62 Ω\n", "0.62 Ω\n        ^^^^^^^^^^^^^^^^^^^\n"),
      good: sample("181 Ω"),
    },
  ],
  check({ context, studies }, report) {
    if (context.upstream.length > 0 || context.supply?.one("earthing")?.args.system.value !== "TT") return;
    const [first] = studies;
    const fact = first && electrodeOf(first);
    const electrode = fact && exactReading({ value: fact.args.value, fact });
    const lowest = lowestLoop(studies);
    const metallic = declaredImpedance("TN-S");
    // An electrode that reads so itself, such as the steel of a large building, is no contradiction.
    if (!electrode || !lowest || lowest.value > metallic.value || electrode.value <= metallic.value) return;
    report(factSpot(lowest.fact), {
      message: `${lowest.word} ${ohms(lowest.value)} is as low as a TN supply gives, and the electrode reads ${ohms(electrode.value)}: record bonded pipes or steel with parallel-path; else look for a neutral joined to earth inside, or ask the distributor whether the supply is TT.`,
      value: amount(lowest.value, "Ω"),
      limit: amountOf(metallic),
      least: true,
      steps: [
        ...metallic.steps,
        relation(`${lowest.word} > the most declared for TN-S`, ohms(lowest.value), ohms(metallic.value)),
      ],
      source: metallic.source,
      related: [{ spot: factSpot(electrode.fact), message: `Electrode resistance: ${ohms(electrode.value)}.` }],
    });
  },
});

/** The lowest loop of the board that does not state what metal lies in parallel: at the board itself, or of a circuit. */
function lowestLoop(studies: readonly WayStudy[]) {
  const loops = studies.flatMap((study) => {
    const Zs = exactReading(study.Zs);
    const board = study.boardImpedance;
    if (study.facts.has("parallel-path") || study.supply.earthing !== "TT") return [];
    return [...(board ? [{ ...board, word: board.name }] : []), ...(Zs ? [{ ...Zs, word: "Zs" }] : [])];
  });
  const [first, ...more] = loops;
  return first && more.reduce((one, other) => (other.value < one.value ? other : one), first);
}
