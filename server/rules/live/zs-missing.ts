import { round } from "../../calc/result.ts";
import { hasNoLoop } from "../../circuit/circuit-kind.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { exactReading, liveTestsDue, workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import type { Fact } from "../../model/values.ts";
import { lineInBlock } from "../common/writing.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

/** Where the board's loop impedance and R1+R2 are measured, Zs may be their sum, marked as calculated. */
function calculated(study: WayStudy): Fix[] {
  const board = study.boardImpedance;
  const R1R2 = exactReading(study.R1R2);
  if (!board || !R1R2 || R1R2.fact.provenance !== "measured" || !study.live) return [];
  const sum = round(board.value + R1R2.value, Math.max(board.decimals, R1R2.decimals));
  const text = `Zs calculated ${sum.toFixed(Math.max(board.decimals, R1R2.decimals))} Ω`;
  return lineInBlock(study.live.header, text, `Write the sum of ${board.name} and R1+R2: ${text}`);
}

export default wayRule({
  id: "live/zs-missing",
  severity: "error",
  since: "0.1",
  title: "Zs of a tested circuit is not recorded.",
  why: "Without Zs nothing shows that the device would disconnect a fault in time. It may be measured, or be the measured Ze or Zdb plus the measured R1+R2, marked as calculated.",
  clauses: ["411.4.4", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
  ^^^^
    polarity     ok
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.62 Ω
    polarity     ok
  }
}`,
    },
  ],
  check(study, report) {
    const { isSpare, liveTests, live } = study;
    if (isSpare || !live || !liveTestsDue(study) || hasNoLoop(study)) return;
    const stated = liveTests.some(
      ({ facts }) => facts.has("Zs") || facts.isUnread("at") || facts.all("at").some((at) => at.args.Zs),
    );
    const old = stated ? onlyFromRecord(study) : undefined;
    if (old) {
      report(factSpot(old), {
        ...gradeOfMissing(study),
        message: `Zs of way ${study.way.id} is from a record, but the work is new: measure it, or calculate it from measured figures and mark it calculated.`,
      });
    }
    if (stated) return;
    const fixes = calculated(study);
    report(wordSpot(live.header), {
      ...gradeOfMissing(study),
      message: `Zs of way ${study.way.id} is not recorded: ${fixes.length > 0 ? "measure it, or write the board's loop impedance plus R1+R2, marked calculated" : "measure it, or write LIM with the reason"}.`,
      fixes,
    });
  },
});

/** The Zs of new work, where all there is of it was read on another day of another circuit. */
function onlyFromRecord(study: WayStudy): Fact | undefined {
  const { liveTests } = study;
  const work = workOf(study);
  if (work !== "new" && work !== "addition") return undefined;
  const all = liveTests.flatMap(({ facts }) =>
    facts.list.filter(({ word, args }) => word === "Zs" || (word === "at" && args.Zs !== undefined)),
  );
  return all.every(({ provenance }) => provenance === "from-record") ? all[0] : undefined;
}
