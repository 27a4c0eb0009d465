import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { type Calculated, ohms, plain, relation } from "../../calc/result.ts";
import type { Fact } from "../../model/values.ts";
import { decimalSlip, latestReadDead } from "../../readings/dead.ts";
import { readOnLines } from "../../readings/lines.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { listed } from "../common/dead-words.ts";
import { amount, amountOf, type Reporter, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/lines-differ",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "One line of a three-phase circuit reads higher than the others.",
  why: "The lines of one cable are of one size and one length, so they read alike. One that reads higher has a poor joint, or its figure was written wrongly; recording the highest as if it were the circuit's hides it.",
  opens: true,
  clauses: ["643.2.1", "526.1"],
  examples: [
    {
      bad: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.90 Ω L1 0.09 Ω L2 0.09 Ω L3 0.90 Ω
                                               ^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.10 Ω L1 0.09 Ω L2 0.09 Ω L3 0.10 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.96 Ω L1 0.48 Ω L2 0.96 Ω L3 0.47 Ω
                                     ^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.49 Ω L1 0.48 Ω L2 0.49 Ω L3 0.47 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare) return;
    for (const word of ["R1+R2", "R2"] as const) compare(word, latestReadDead(study, word), mostDead, report);
    compare("Zs", study.Zs?.fact, mostOfLoop, report);
  },
});

/** The most a line may read beside one that reads `least`, Ω. */
type MostBeside = (least: number) => Calculated;

const mostDead: MostBeside = (least) => {
  const { highShare, highLeast } = deadTestPractice;
  return {
    value: Math.max(highShare.value * least, least + highLeast.value),
    unit: "Ω",
    steps: [],
    source: highShare.source,
  };
};

const mostOfLoop: MostBeside = (least) => {
  const [floor, share] = [practiceOf("loop-floor"), practiceOf("loop-share")];
  return {
    value: least + Math.max(floor.value, share.value * least),
    unit: "Ω",
    steps: [...floor.steps, ...share.steps],
    source: share.source,
  };
};

function compare(word: string, fact: Fact | undefined, mostBeside: MostBeside, report: Reporter): void {
  const lines = readOnLines(fact).filter(({ reading }) => reading.sign === "=");
  const least = Math.min(...lines.map(({ reading }) => reading.value));
  if (lines.length < 2 || least <= 0) return;
  const most = mostBeside(least);
  const alike = lines.filter(({ reading }) => !exceeds(reading.value, most.value));
  for (const { name, fact: at, reading } of lines) {
    if (!exceeds(reading.value, most.value)) continue;
    const isSlip = decimalSlip(reading.value / least) !== undefined;
    report(valueSpot(at, reading), {
      message: `${word} of ${name} is ${ohms(reading.value)} where ${readBy(alike)}, and the lines of one cable read alike: ${isSlip ? "check the decimal point, and " : ""}look for a poor joint in ${lineOf(name)}.`,
      value: amount(reading.value, "Ω"),
      limit: amountOf(most),
      steps: [
        ...most.steps,
        relation(`${lineOf(name)} ≤ the lowest line with its tolerance`, ohms(reading.value), ohms(most.value)),
      ],
      source: most.source,
    });
  }
}

const lineOf = (name: string): string => name.replace("line ", "");

/** What the others read: "L1 and L2 read 0.47 to 0.48 Ω". */
function readBy(lines: ReturnType<typeof readOnLines>): string {
  const names = listed(lines.map(({ name }) => lineOf(name)));
  const values = lines.map(({ reading }) => reading.value);
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  const range = ohms(least) === ohms(greatest) ? ohms(least) : `${plain(least, 2)} to ${ohms(greatest)}`;
  return `${names} ${lines.length > 1 ? "read" : "reads"} ${range}`;
}
