/** Whether the stage a schedule claims agrees with the tests that stand in it. */
import type { Installation } from "../../model/installation.ts";
import { isMissingTest } from "../../rules/common/missing-tests.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import type { Comparison, Verdict } from "../setting/document.ts";

const isUnread = ({ check }: Finding): boolean => check.startsWith("language/") && check !== "language/no-version";

const count = (number: number, one: string, many: string): string =>
  number === 1 ? `one ${one}` : `${number} ${many}`;

/** In the order of gravity: what is not there, what cannot be known, what is claimed too low, what is agreed to. */
export function stageJudgement({ head }: Installation, { findings, suppressed }: CheckResult): Comparison {
  const stage = head.facts.one("stage")?.args.stage.value;
  const missing = findings.filter(isMissingTest).length;
  const excused = suppressed.filter(({ finding }) => isMissingTest(finding)).length;
  const unread = findings.filter(isUnread).length;
  const behind = [...findings, ...suppressed.map(({ finding }) => finding)].some(
    ({ check }) => check === "record/stage-behind",
  );
  const say = (verdict: Verdict, remark: string): Comparison => ({
    kind: "judgement",
    text: stage ? `Stage “${stage}”` : "Stage of the work",
    verdict,
    remark,
    source: undefined,
  });
  if (missing > 0) return say("fails", `${count(missing, "required test is", "required tests are")} missing`);
  if (unread > 0)
    return say("advises", `${count(unread, "line", "lines")} could not be understood in full, so it cannot be judged`);
  if (stage === undefined)
    return say("advises", "none is stated: it is treated as a design, and no missing test is reported");
  if (behind) return say("advises", "tests are recorded beyond this stage, so missing tests are not reported");
  if (excused > 0) return say("holds", `${count(excused, "test is", "tests are")} omitted by a departure`);
  return say(
    "holds",
    stage === "tested" || stage === "dead-tested"
      ? "all required tests are recorded, or left out with a reason"
      : "no test is required yet",
  );
}
