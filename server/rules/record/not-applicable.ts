import { testName } from "../../../grammar/readings.ts";
import { needsNoCpc } from "../../circuit/circuit-kind.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isAbsent, type WordIn } from "../../model/values.ts";
import { absencesIn } from "../../readings/absences.ts";
import { insulationOf } from "../../readings/insulation.ts";
import { capital } from "../../text/words.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

type Applies = (study: WayStudy, param: string) => string | undefined;

const mayNot: Applies = () => undefined;
const always =
  (why: string): Applies =>
  () =>
    why;

const hasEarth = (study: WayStudy): boolean =>
  study.cable?.cpcBy !== "none" && !study.facts.has("class-II") && !needsNoCpc(study);

const rcdApplies: Applies = ({ rcds }) => (rcds.length > 0 ? "an RCD protects this circuit" : undefined);

/** Words of a way's tests that are read; a word that comes to the language has to be answered for here. */
type TestWord = Exclude<WordIn<"dead"> | WordIn<"live">, "note" | "detail" | "struck-out" | "temperature">;

/** Why a test does apply to a circuit; nothing where it may well not. */
const reasons: Readonly<Record<TestWord, Applies>> = {
  polarity: always("polarity is verified on every circuit"),
  ends: ({ isRing }) => (isRing ? "a ring final is measured end to end" : undefined),
  "R1+R2": (study) => {
    const R2 = study.dead?.facts.one("R2");
    const needed = hasEarth(study) && (!R2 || isAbsent(R2.args.value));
    return needed ? "R1+R2 or R2 proves the protective conductor" : undefined;
  },
  R2: (study) =>
    hasEarth(study) && !study.isRing && !study.dead?.facts.has("R1+R2")
      ? "R1+R2 or R2 proves the protective conductor"
      : undefined,
  insulation: (study, param) => {
    if (/^L[123]?-E$/.test(param) && hasEarth(study)) return "the insulation of every circuit is measured to earth";
    if (/^L[12]?-L[23]?$/.test(param) && !testedAsOne(study)) return "a fault between lines shows nowhere else";
    return param === "N-E" && neutralApplies(study) ? "a fault of the neutral to earth shows nowhere else" : undefined;
  },
  Zs: (study) => (hasEarth(study) ? "a fault to earth has to be disconnected" : undefined),
  rcd: rcdApplies,
  "test-button": rcdApplies,
  "trip-current": mayNot,
  "afdd-button": mayNot,
  "afdd-test": mayNot,
  "rcm-alarm": mayNot,
  leakage: mayNot,
  thermal: mayNot,
  at: (study, param) => {
    if (param === "polarity") return "polarity is verified at every point";
    return param === "L-E" && hasEarth(study) ? "the protective conductor is proved at every point" : undefined;
  },
  Ipf: mayNot,
  PSCC: mayNot,
  PEFC: mayNot,
  "phase-sequence": mayNot,
  voltage: mayNot,
  function: mayNot,
};

const isTestWord = (word: string): word is TestWord => Object.hasOwn(reasons, word);

const applies = (word: string, param: string, study: WayStudy): string | undefined =>
  isTestWord(word) ? reasons[word](study, param) : undefined;

/** With line and neutral joined the neutral is in the reading to earth; a circuit on three lines may have none. */
function neutralApplies(study: WayStudy): boolean {
  const { threePhase, uses } = study;
  if (threePhase || uses.has("selv") || uses.has("control")) return false;
  return !testedAsOne(study);
}

/** Live conductors joined and tested to earth, or another reason why single pairs were not tested. */
const testedAsOne = (study: WayStudy): boolean =>
  insulationOf(study)?.facts.some(({ args }) => args.joined || args.why) ?? false;

export default wayRule({
  id: "record/not-applicable",
  severity: "error",
  since: "0.1",
  title: "N/A is written for a test that applies.",
  why: "Not applicable is not the same as not done. A test that was not made is LIM with its reason, so that the reader knows what rests on no test.",
  clauses: ["643.1", "643.2.1", "643.3", "643.6", "643.7"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 ring "Hall sockets" {
  dead 2026-03-04 {
    polarity     N/A
                 ^^^
  }
}`,
      good: `way 1 ring "Hall sockets" {
  dead 2026-03-04 {
    polarity     ok
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R2           N/A "Not read"
                 ^^^^^^^^^^^^^^
    insulation   500 V  L-L >999 MΩ  L-N >999 MΩ  L1-E N/A  L2-E >999 MΩ  L3-E >999 MΩ  N-E >999 MΩ
                                                       ^^^
  }
}`,
      good: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R2           0.21 Ω
    insulation   500 V  L-L >999 MΩ  L-N >999 MΩ  L-E >999 MΩ  N-E >999 MΩ
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare) return;
    const seen = new Set<number>();
    for (const test of [study.dead, study.live]) {
      if (!test) continue;
      for (const { fact, param, value } of absencesIn(test.facts)) {
        const why = value.absent === "N/A" ? applies(fact.word, param, study) : undefined;
        if (why === undefined || seen.has(value.start)) continue;
        seen.add(value.start);
        const name = testName(fact.word);
        const subject = capital(name);
        report(valueSpot(fact, value), {
          // A test that is called not applicable was not made: no lighter than one that is missing.
          ...gradeOfMissing(study),
          message: `${subject} does apply here: ${why}. If it was not done, write LIM with the reason.`,
        });
      }
    }
  },
});
