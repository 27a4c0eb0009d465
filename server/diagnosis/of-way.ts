/** What the readings of a way mean, worked out at once or in steps: of a ring of a hundred points it takes a second. */
import { memoByObject } from "../circuit/kept.ts";
import type { WayStudy } from "../circuit/way.ts";
import { Memo } from "../memo/memo.ts";
import { finished, type Steps } from "../memo/steps.ts";
import { type Diagnosis, diagnosePattern, diagnosing, isSound } from "./index.ts";
import { type ReadSheet, sheetOfWay } from "./read.ts";
import type { Evidence } from "./sheet.ts";

interface Diagnosed {
  readonly sheet: ReadSheet;
  readonly diagnosis: Diagnosis;
}

/** What they mean; nothing where there are none, or where they are such as a sound circuit gives. */
export function diagnosisOfWay(study: WayStudy): Diagnosed | undefined {
  const read = readingsOf(study);
  if (!read) return undefined;
  const { sheet, isAsSound } = read;
  const diagnosis = isAsSound ? diagnosePattern(sheet) : finished(underWayOn(study, sheet).toItsEnd());
  return diagnosis && { sheet, diagnosis };
}

/** Whoever works at it beforehand and the check that follows look at the same readings. */
const readingsOf = memoByObject((study: WayStudy) => {
  const sheet = sheetOfWay(study);
  return sheet && { sheet, isAsSound: isSound(sheet) };
});

/** Works it out step by step, for `diagnosisOfWay` to find. It may be left at any of them: the next goes on from there. */
export function* diagnosisInSteps(study: WayStudy): Steps<void> {
  const read = readingsOf(study);
  if (read && !read.isAsSound) yield* underWayOn(study, read.sheet).toItsEnd();
}

const underWay = new Memo<WayStudy, UnderWay>();

/**
 * Whoever asks for it asks what else was tested, too: that is all it follows from besides the sheet, and whoever worked
 * at it before did so for himself.
 */
function underWayOn(study: WayStudy, sheet: ReadSheet): UnderWay {
  const { evidence } = sheet;
  const before = underWay.get(study);
  if (before && before.evidence === evidence && !before.isStuck) return before;
  const fresh = new UnderWay(evidence, diagnosing(sheet));
  underWay.set(study, fresh);
  return fresh;
}

/** A diagnosis that several may work at, each for a while. */
class UnderWay {
  readonly evidence: Evidence | undefined;
  /** Whether a step of it threw: it has no end then, and whoever comes next begins anew. */
  isStuck = false;
  readonly #steps: Steps<Diagnosis>;
  #diagnosis: Diagnosis | undefined;

  constructor(evidence: Evidence | undefined, steps: Steps<Diagnosis>) {
    this.evidence = evidence;
    this.#steps = steps;
  }

  *toItsEnd(): Steps<Diagnosis> {
    for (;;) {
      if (this.#diagnosis) return this.#diagnosis;
      this.isStuck = true;
      const { done, value } = this.#steps.next();
      this.isStuck = false;
      if (done) {
        this.#diagnosis = value;
        return value;
      }
      yield;
    }
  }
}
