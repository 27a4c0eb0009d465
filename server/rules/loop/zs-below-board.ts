import { fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, plain, relation, step } from "../../calc/result.ts";
import { type ExactReading, exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { interchangedWords, type LoopAgreement, loopAgreement } from "../../readings/loop.ts";
import { slipWords } from "../common/dead-words.ts";
import { loopUncertainty } from "../common/loop-uncertainty.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, boardRule, factSpot, type Reporter } from "../frame/rule.ts";

const throughElectrode = (Zs: string): string =>
  ["21.4 Ω", Zs, "21.6 Ω"]
    .map(
      (reading, at) => `way ${at + 1} radial "Pump ${at + 1}" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           ${reading}
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "loop/zs-below-board",
  severity: "warning",
  since: "0.1",
  title: "Zs is lower than the loop impedance of its board.",
  why: "Zs cannot be lower than the Ze or Zdb of its board, nor, through an electrode, a fraction of what the board's other circuits read. Either bonded metal is in parallel, or one of the two was read on another day or another circuit, or its decimal point has slipped.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested", board: "fed-from supply\nZdb 0.62 Ω" },
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.41 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.81 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TT\nZe 21 Ω\nelectrode rod 20 Ω" },
      bad: throughElectrode("2.15 Ω").replace("2.15 Ω\n", "2.15 Ω\n    ^^^^^^^^^^^^^^^^^^^\n"),
      good: throughElectrode("21.5 Ω"),
    },
  ],
  check({ studies }, report) {
    checkThroughElectrode(studies, report);
    const judged = studies.flatMap((study) => {
      const found = loopAgreement(study);
      return found?.board ? [{ study, found, board: found.board }] : [];
    });
    const low = judged.filter(({ found }) => found.verdict === "below-board");
    const [first] = low;
    // One wrong figure at the board would call every one of its circuits into question: it is reported once, at the board.
    if (first?.board.name === "Zdb" && low.length > 1 && low.length === judged.length)
      reportBoard(
        first.board,
        low.map(({ study, found }) => ({ study, Zs: found.Zs })),
        report,
      );
    else for (const one of low) reportWay(one, report);
  },
});

interface Low {
  readonly study: WayStudy;
  readonly found: LoopAgreement;
  readonly board: ExactReading & { readonly name: "Ze" | "Zdb" };
}

/** A reading of Zs, and whose. */
interface Read {
  readonly study: WayStudy;
  readonly Zs: ExactReading;
}

/**
 * Of a TT supply: bonded pipes earth all circuits of a board alike, so that Ze says nothing of one, and the board's Zdb
 * and its other circuits say all.
 */
function checkThroughElectrode(studies: readonly WayStudy[], report: Reporter): void {
  const read = studies.flatMap((study): Read[] => {
    const Zs = exactReading(study.Zs);
    return Zs && !study.isSpare && isOfSupplyTT(study) ? [{ study, Zs }] : [];
  });
  const board = read[0]?.study.boardImpedance;
  const Zdb = board?.name === "Zdb" ? board : undefined;
  const leastOfOthers = leastBeside(read);
  const low = read.filter(({ study, Zs }) => {
    const least = Zdb ?? leastOfOthers(study)?.Zs;
    return least && !study.facts.has("parallel-path") && fallsShort(Zs.value, least.value / leastShare().value);
  });
  if (Zdb && low.length > 1 && low.length === read.length) reportBoard(Zdb, low, report);
  else
    for (const one of low) {
      const other = leastOfOthers(one.study);
      if (Zdb) reportThroughElectrode(one, Zdb, "Zdb", report);
      else if (other) reportThroughElectrode(one, other.Zs, `way ${other.study.way.id}`, report);
    }
}

const leastShare = () => practiceOf("loop-electrode");

const isOfSupplyTT = ({ context, facts, supply }: WayStudy): boolean =>
  supply.earthing === "TT" && !facts.has("earthing") && context.supply?.one("earthing")?.args.system.value === "TT";

/** Of each circuit the lowest of at least two others: a single one could itself be wrong. */
function leastBeside(read: readonly Read[]): (study: WayStudy) => Read | undefined {
  const [lowest, second, ...more] = read.toSorted((one, other) => one.Zs.value - other.Zs.value);
  return (study) => (more.length === 0 ? undefined : lowest?.study === study ? second : lowest);
}

function reportThroughElectrode({ Zs }: Read, least: ExactReading, of: string, report: Reporter): void {
  const share = leastShare();
  report(factSpot(Zs.fact), {
    message: `Zs ${ohms(Zs.value)} is far below the ${ohms(least.value)} of ${of}, which goes through the same electrode: check its decimal point, or record metal in parallel with parallel-path.`,
    value: amount(Zs.value, "Ω"),
    limit: amount(least.value / share.value, "Ω"),
    least: true,
    steps: [step("least", `${ohms(least.value)} / ${plain(share.value)}`, ohms(least.value / share.value))],
    source: share.source,
    related: [{ spot: factSpot(least.fact), message: `${of === "Zdb" ? "Zdb" : "Zs"} ${ohms(least.value)}.` }],
  });
}

function reportBoard(board: Low["board"], low: readonly Read[], report: Reporter): void {
  const greatest = Math.max(...low.map(({ Zs }) => Zs.value));
  report(factSpot(board.fact), {
    message: `All ${low.length} Zs readings are below ${board.name} ${ohms(board.value)} (highest ${ohms(greatest)}): check ${board.name} and its decimal point.`,
    value: amount(board.value, "Ω"),
    limit: amount(greatest, "Ω"),
    steps: [relation(`Zs ≥ ${board.name}`, ohms(greatest), ohms(board.value))],
    source: practiceOf("loop-below").source,
    related: low.map(({ study, Zs }) => ({
      spot: factSpot(Zs.fact),
      message: `Way ${study.way.id}: Zs ${ohms(Zs.value)}.`,
    })),
  });
}

function reportWay({ study, found, board }: Low, report: Reporter): void {
  const { Zs } = found;
  const allowance = practiceOf("loop-below");
  const meter = loopUncertainty(study, { Zs, board });
  const by = board.value - allowance.value - Zs.value;
  report(factSpot(Zs.fact), {
    message:
      interchangedWords(study, found) ??
      `Zs ${found.atMost ? "<" : ""}${ohms(Zs.value)} is below ${board.name} ${ohms(board.value)}: record metal in parallel if there is any, or one of the two is wrong.${found.expected ? slipWords(Zs.value, found.expected.value) : ""}${beyondTolerance(meter, by)}`,
    value: amount(Zs.value, "Ω"),
    limit: amount(board.value, "Ω"),
    least: true,
    steps: [relation(`Zs ≥ ${board.name}`, ohms(Zs.value), ohms(board.value)), ...uncertaintySteps(meter)],
    source: allowance.source,
    related: [{ spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` }],
  });
}
