import { rcdsInWork } from "../../boards/board-rcds.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { rcdTime } from "../../calc/rcd-time.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { ownRcds } from "../../circuit/rcds.ts";
import { isOutsideWork, stageOf } from "../../circuit/supply.ts";
import type { Rcd } from "../../circuit/way.ts";
import { numberAt, valueAt } from "../../model/fact-values.ts";
import { type Facts, isCalledNotApplicable } from "../../model/values.ts";
import { everyRcdFact, liveOfBoard, rcdFactsOfWay, rcdLabel } from "../../readings/rcd-tests.ts";
import type { Edition } from "../../tables/editions.ts";
import { capital, listed } from "../../text/words.ts";
import { type BoardSubject, boardRule, type Reporter, wordSpot } from "../frame/rule.ts";

/** The multiples the edition requires. Before 2022 those below and above the rating were for additional protection. */
function required(rcd: Rcd, edition: Edition): number[] {
  const additional = rcd.sensitivity <= rcdLimit("additional").value && !rcd.delayed;
  return [1, ...(additional ? [5, 0.5] : [])].filter(
    (multiple) => rcdTime({ standard: rcd.standard, delayed: rcd.delayed, multiple, edition })?.required,
  );
}

type Tested = ReturnType<typeof everyRcdFact>;

/** RCDs to be tested at the board, with a place to say so where the test is missing. */
function shared({ context, studies }: BoardSubject): readonly Rcd[] {
  const tested = liveOfBoard(context).length > 0 || studies.some((study) => study.live);
  // A test that does not say of which RCD it is, is asked about by itself.
  const blocks = [...liveOfBoard(context), ...studies.flatMap(({ liveTests }) => liveTests)];
  return tested && !isUnclear(blocks, everyRcdFact(context, studies)) ? rcdsInWork(context.board, studies) : [];
}

/** Whether a test was not understood, or is of an RCD that is not known: it may be the one that seems to be missing. */
const isUnclear = (blocks: readonly { readonly facts: Facts<"boardLive" | "live"> }[], tested: Tested): boolean =>
  blocks.some(({ facts }) => facts.isUnread("rcd")) || tested.some(({ device }) => !device);

const written = (multiple: number): string => (multiple === 0.5 ? "½" : `${multiple}`);

function checkRcd(rcd: Rcd, all: Tested, { context }: BoardSubject, edition: Edition, report: Reporter): void {
  const tests = all.filter(({ device }) => device?.fact === rcd.fact);
  // A time without its multiple is spoken of by itself.
  const multiples = tests.map(({ fact }) => numberAt(fact, "multiple"));
  if (multiples.includes(undefined)) return;
  const missing = required(rcd, edition).filter((multiple) => !multiples.includes(multiple));
  if (missing.length === 0) return;
  const name = rcdLabel(rcd);
  report(wordSpot(rcd.fact), {
    ...gradeOfMissing({ installation: context.installation }),
    message:
      tests.length === 0
        ? `No test of ${name} is recorded: ${edition.id} requires ${listed(missing.map(written))} × IΔn. Record the time, or LIM with the reason.`
        : `${capital(name)} was not tested at ${listed(missing.map(written))} × IΔn, as ${edition.id} requires.`,
    source: edition.sources.rcdTest,
    ...(missing.every((multiple) => multiple === 0.5) ? { severity: "information" as const } : {}),
  });
}

export default boardRule({
  id: "rcd/test-missing",
  severity: "warning",
  since: "0.1",
  title: "An RCD is not tested.",
  why: "Whether it trips is not known until it has been tested. Since 2022 one a.c. test at 1 × IΔn is enough; earlier practice included tests at ½ and 5 × IΔn.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  ^^^^^^
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           0.62 Ω
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
    {
      setting: { stage: "tested", standard: "BS 7671:2018" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  ^^^^^^
  live 2026-03-05 {
    rcd          30 mA 0.5x no-trip
    rcd          30 mA 1x 24.1 ms
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 0.5x no-trip
    rcd          30 mA 1x 24.1 ms
    rcd          30 mA 5x 11.2 ms
  }
}`,
    },
  ],
  check(subject, report) {
    const { context, studies } = subject;
    if (!context.edition || stageOf(context) !== "tested") return;
    const all = everyRcdFact(context, studies);
    // On a board “not applicable” is no test; on a way a check of its own says so.
    const made = all.filter(({ fact }) => !isCalledNotApplicable(valueAt(fact, "time")));
    for (const rcd of shared(subject)) checkRcd(rcd, made, subject, context.edition, report);
    for (const study of studies) {
      // A way without any live test is reported as a whole.
      if (isOutsideWork(study) || !study.live || isUnclear(study.liveTests, rcdFactsOfWay(study))) continue;
      for (const rcd of ownRcds(study)) checkRcd(rcd, all, subject, context.edition, report);
    }
  },
});
