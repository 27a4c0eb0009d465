import type { Conductor } from "../../calc/circuit-network.ts";
import { ohms } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { conductorWords } from "../../diagnosis/conductors.ts";
import { sheetOfWay } from "../../diagnosis/read.ts";
import { asCrossed, type CrossedLegs } from "../../diagnosis/two-rings.ts";
import type { Fact } from "../../model/values.ts";
import { studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { relatedFact } from "../common/dead-words.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "ring/legs-swapped-between-rings",
  severity: "information",
  since: "0.1",
  title: "Two rings of one board are open in the same conductors.",
  why: "Where the legs of two rings are interchanged at the board, each reads open, and the conductor of one closes with the other's. Isolate both, measure between the rings, put the legs right, and repeat both tests.",
  opens: true,
  clauses: ["643.2.1", "314.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends         r1 0.44 Ω  rn >99.9 Ω  r2 0.73 Ω
        ^^^^
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends         r1 0.36 Ω  rn >99.9 Ω  r2 0.60 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends         r1 0.44 Ω  rn 0.45 Ω  r2 0.73 Ω
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends         r1 0.36 Ω  rn >99.9 Ω  r2 0.60 Ω
      }
    }
  }
}`,
    },
  ],
  check({ studies }, report) {
    const open = studies.flatMap((study): Open[] => {
      const pattern = ringPattern(study);
      const { ends } = studyRing(study);
      if (pattern?.kind !== "open-ends" || !ends) return [];
      const which = pattern.ends.map((end) => conductorOf[end]);
      const sheet = sheetOfWay(study);
      return [{ study, ends, which, crossed: sheet && asCrossed(sheet, which) }];
    });
    // A ring whose points show the break somewhere else has its own.
    const possible = open.filter(({ crossed }) => crossed?.fits !== false);
    for (const [index, one] of possible.entries()) {
      const same = (other: Open) => other.which.join() === one.which.join();
      const others = possible.slice(index + 1).filter(same);
      if (others.length === 0 || possible.slice(0, index).some(same)) continue;
      const next = nextStep([one, ...others]);
      report(wordSpot(one.ends), {
        message: messageOf(one, others),
        related: [
          ...(next === "" ? [] : [{ spot: wordSpot(one.ends), message: next }]),
          ...others.map(({ ends, study }) => relatedFact(ends, `End-to-end readings of way ${study.way.id}.`)),
        ],
      });
    }
  },
});

interface Open {
  readonly study: WayStudy;
  readonly ends: Fact;
  readonly which: readonly Conductor[];
  readonly crossed: CrossedLegs | undefined;
}

const conductorOf = { r1: "line", rn: "neutral", r2: "cpc" } as const;
const endOf = { line: "r1", neutral: "rn", cpc: "r2" } as const;

function messageOf(one: Open, others: readonly Open[]): string {
  const names = others.map(({ study }) => study.way.id).join(", ");
  const which = one.which.map((conductor) => endOf[conductor]).join(", ");
  const all = [one, ...others];
  const proven = all.every(({ crossed }) => crossed?.placed)
    ? " The readings at their points fit that, and no break further out."
    : "";
  return `Ways ${one.study.way.id} and ${names} are open in the same conductors (${which}): are their legs interchanged at the board?${proven}`;
}

/** The measurement between the two rings that decides it, with what it should read; of two rings only. */
function nextStep(both: readonly Open[]): string {
  if (both.length !== 2) return "";
  const [conductor] = both[0]?.which ?? [];
  if (!conductor) return "";
  const expected = both.flatMap(({ crossed }) => crossed?.ends[conductor] ?? []);
  const value = expected.length === both.length ? `, about ${expected.map((end) => ohms(end)).join(" and ")}` : "";
  const [first, second] = both.map(({ study }) => study.way.id);
  return `Next: isolate both, and measure the ${conductorWords[conductor]} from each leg of way ${first} to each of way ${second}. Two pairs that read${value} confirm it; all open: each ring is broken.`;
}
