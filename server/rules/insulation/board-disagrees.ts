import { parallelInsulation } from "../../calc/insulation.ts";
import { megohms, relation } from "../../calc/result.ts";
import { boardInsulation, insulationParts } from "../../readings/insulation.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { amount, amountOf, boardRule, valueSpot } from "../frame/rule.ts";

const head = `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
`;
const ways = `    way 1 radial "Lights" {
      dead 2026-03-04 {
        insulation   500 V  L-N 300 MΩ  L-E 40 MΩ  N-E >999 MΩ
      }
    }
    way 2 radial "Heater" {
      dead 2026-03-04 {
        insulation   500 V  L-N 300 MΩ  L-E 60 MΩ  N-E >999 MΩ
      }
    }
  }
}
`;

const equal = ways.replace("60 MΩ", "42 MΩ").replace(
  "  }\n}\n",
  `    way 3 radial "Sockets" {
      dead 2026-03-04 {
        insulation   500 V  L-N 300 MΩ  L-E 41 MΩ  N-E >999 MΩ
      }
    }
  }
}
`,
);

export default boardRule({
  id: "insulation/board-disagrees",
  severity: "warning",
  since: "0.1",
  title: "Insulation resistance of a board does not agree with that of its circuits.",
  why: "Circuits tested together are resistances in parallel, so the whole reads less than the lowest of them. A higher reading is impossible: one of the figures is wrong, or a circuit was off. A much lower one is something else on the board, such as a surge protective device, a meter or damp.",
  opens: true,
  clauses: ["643.3"],
  examples: [
    {
      bad: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E 120 MΩ joined
                              ^^^^^^
    }
${ways}`,
      good: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E 20 MΩ joined
    }
${ways}`,
    },
    {
      bad: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E 3 MΩ joined
                              ^^^^
    }
${ways}`,
      good: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E >20 MΩ joined
    }
${ways}`,
    },
    {
      bad: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E 42 MΩ
                              ^^^^^
    }
${equal}`,
      good: `${head}    dead 2026-03-04 {
      insulation   500 V  L-E 16 MΩ
    }
${equal}`,
    },
  ],
  check({ context, studies }, report) {
    const test = boardInsulation(context);
    const total = test?.values.find(({ pair }) => pair === "L-E");
    if (!test || !total || total.quantity.sign === "<") return;
    const circuits = studies.filter((study) => !study.isSpare);
    const joined = total.fact.args.joined !== undefined;
    const least = circuits.flatMap((study) => insulationParts(study, joined));
    const lowest = least
      .filter(({ value }) => value.quantity.sign !== ">")
      .sort((a, b) => a.value.quantity.value - b.value.quantity.value)[0];
    const { insulationTolerance, insulationTotal } = deadTestPractice;
    const { value } = total.quantity;
    const related = least
      .slice(0, 8)
      .map((own) =>
        relatedFact(own.value.fact, `Way ${own.study.way.id}: insulation ${shownMegohms(own.value.quantity)}.`),
      );
    const spot = valueSpot(total.fact, total.quantity);
    if (lowest && value > lowest.value.quantity.value * (1 + insulationTolerance.value)) {
      report(spot, {
        message: `The board reads ${shownMegohms(total.quantity)}, more than way ${lowest.study.way.id} alone (${shownMegohms(lowest.value.quantity)}): was that circuit off?`,
        value: amount(value, "Ω"),
        limit: amount(lowest.value.quantity.value, "Ω"),
        steps: [relation("R ≤ the least of its parts", megohms(value), megohms(lowest.value.quantity.value))],
        source: insulationTolerance.source,
        related,
      });
      return;
    }
    // What is off scale, or not read, only lowers the whole: those that were read bound it from above.
    const read = least.flatMap(({ value: one }) => (one.quantity.sign === "=" ? [one.quantity.value] : []));
    const most = read.length > 1 && read.every((one) => one > 0) ? parallelInsulation(read) : undefined;
    if (most && value > most.value * insulationTotal.value) {
      report(spot, {
        message: `The board reads ${shownMegohms(total.quantity)}, far more than the ${megohms(most.value)} of its circuits in parallel: were some of them off, or a figure copied?`,
        value: amount(value, "Ω"),
        limit: amountOf(most),
        steps: most.steps,
        source: combine(most.source, insulationTotal.source),
        related,
      });
      return;
    }
    const known = new Set(least.map(({ study }) => study));
    if (total.quantity.sign !== "=" || known.size < circuits.length || least.length === 0) return;
    // Bounds count as values, so what comes out is the least the whole can be.
    if (least.some((own) => own.value.quantity.sign === "<" || own.value.quantity.value <= 0)) return;
    const parallel = parallelInsulation(least.map((own) => own.value.quantity.value));
    if (!parallel || value * insulationTotal.value >= parallel.value) return;
    report(spot, {
      message: `The board reads ${shownMegohms(total.quantity)}, far below the ${megohms(parallel.value)} of its circuits in parallel: disconnect SPDs and meters, and look for damp.`,
      value: amount(value, "Ω"),
      limit: amountOf(parallel),
      least: true,
      steps: parallel.steps,
      source: combine(parallel.source, insulationTotal.source),
      related,
    });
  },
});
