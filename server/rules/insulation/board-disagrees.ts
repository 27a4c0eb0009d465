import { parallelInsulation } from "../../calc/insulation.ts";
import { megohms, relation } from "../../calc/result.ts";
import type { Quantity } from "../../model/values.ts";
import { boardInsulation, insulationParts } from "../../readings/insulation.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { amount, amountOf, boardRule, type Report, valueSpot } from "../frame/rule.ts";

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
    const parts = circuits.flatMap((study) => insulationParts(study, joined));
    const isWhole = new Set(parts.map(({ study }) => study)).size === circuits.length && parts.length > 0;
    const found =
      aboveOne(total.quantity, parts) ??
      aboveAll(total.quantity, parts) ??
      (isWhole ? belowAll(total.quantity, parts) : undefined);
    if (!found) return;
    report(valueSpot(total.fact, total.quantity), {
      ...found,
      value: amount(total.quantity.value, "Ω"),
      related: parts
        .slice(0, 8)
        .map(({ value: { fact, quantity }, study }) =>
          relatedFact(fact, `Way ${study.way.id}: insulation ${shownMegohms(quantity)}.`),
        ),
    });
  },
});

type Parts = ReturnType<typeof insulationParts>;
type Disagreement = Pick<Report, "message" | "limit" | "least" | "steps" | "source">;

/** More than one circuit alone reads. */
function aboveOne(total: Quantity, parts: Parts): Disagreement | undefined {
  const { insulationTolerance } = deadTestPractice;
  const [lowest] = parts
    .filter(({ value }) => value.quantity.sign !== ">")
    .sort((a, b) => a.value.quantity.value - b.value.quantity.value);
  if (!lowest) return undefined;
  const { quantity } = lowest.value;
  if (total.value <= quantity.value * (1 + insulationTolerance.value)) return undefined;
  return {
    message: `The board reads ${shownMegohms(total)}, more than way ${lowest.study.way.id} alone (${shownMegohms(quantity)}): was that circuit off?`,
    limit: amount(quantity.value, "Ω"),
    steps: [relation("R ≤ the least of its parts", megohms(total.value), megohms(quantity.value))],
    source: insulationTolerance.source,
  };
}

/** More than all circuits that were read. What is off scale, or not read, only lowers the whole: they bound it from above. */
function aboveAll(total: Quantity, parts: Parts): Disagreement | undefined {
  const { insulationTotal } = deadTestPractice;
  const read = parts.flatMap(({ value: { quantity } }) => (quantity.sign === "=" ? [quantity.value] : []));
  const most = read.length > 1 && read.every((one) => one > 0) ? parallelInsulation(read) : undefined;
  if (!most || total.value <= most.value * insulationTotal.value) return undefined;
  return {
    message: `The board reads ${shownMegohms(total)}, far more than the ${megohms(most.value)} of its circuits in parallel: were some of them off, or a figure copied?`,
    limit: amountOf(most),
    steps: most.steps,
    source: combine(most.source, insulationTotal.source),
  };
}

/** Far below all circuits. Bounds count as values, so what comes out is the least the whole can be. */
function belowAll(total: Quantity, parts: Parts): Disagreement | undefined {
  const { insulationTotal } = deadTestPractice;
  if (total.sign !== "=" || parts.some(({ value: { quantity } }) => quantity.sign === "<" || quantity.value <= 0))
    return undefined;
  const parallel = parallelInsulation(parts.map(({ value }) => value.quantity.value));
  if (!parallel || total.value * insulationTotal.value >= parallel.value) return undefined;
  return {
    message: `The board reads ${shownMegohms(total)}, far below the ${megohms(parallel.value)} of its circuits in parallel: disconnect SPDs and meters, and look for damp.`,
    limit: amountOf(parallel),
    least: true,
    steps: parallel.steps,
    source: combine(parallel.source, insulationTotal.source),
  };
}
