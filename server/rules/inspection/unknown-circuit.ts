import { runsOf } from "../../circuit/runs.ts";
import { inspectionsOf } from "../../model/inspections.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import { suggestionFor } from "../../model/suggestions.ts";
import type { Fact, Val } from "../../model/values.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

interface CircuitLine extends Fact {
  readonly args: Fact["args"] & {
    readonly board?: Val<string>;
    readonly ways?: readonly Val<string>[];
    readonly at?: Val<string>;
  };
}

const ofCircuits = ["covers", "sampled-out", "limitation", "observation"] as const;

export default installationRule({
  id: "inspection/unknown-circuit",
  severity: "error",
  since: "0.1",
  title: "An inspection names a way or a point that is not there.",
  why: "What it states of that circuit holds for none: a circuit that was to be sampled out counts as not tested, and an observation is at no place. Correct the number, or name the board where there are several.",
  clauses: [],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth"  board A  way 3
                                               ^
  }
  board A {
    way 1 radial "Oven"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth"  board A  way 1
  }
  board A {
    way 1 radial "Oven"
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth"  way 1
                                      ^
  }
  board A {
    way 1 radial "Oven"
  }
  board B {
    way 1 radial "Lights"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth"  board B  way 1
  }
  board A {
    way 1 radial "Oven"
  }
  board B {
    way 1 radial "Lights"
  }
}`,
    },
  ],
  check({ head, boards, names }, report) {
    if (names.incomplete) return;
    for (const { facts } of inspectionsOf(head))
      for (const word of ofCircuits) for (const line of facts.all(word)) checkLine(line, boards, report);
  },
});

function checkLine(line: CircuitLine, boards: readonly BoardInPlace[], report: Reporter): void {
  const { board: named, ways = [], at } = line.args;
  if (!named && ways.length > 0 && boards.length > 1) {
    const [first] = ways;
    if (first)
      report(valueSpot(line, first), {
        message: `Way ${first.value} of which board? This installation has ${boards.length}: write “board” and its name before it.`,
      });
    return;
  }
  const place = boards.find(({ board }) => !named || board.head.name === named.value);
  // A board that is not there is a name that nothing defines.
  if (!place) return;
  const { board } = place;
  for (const way of ways) {
    if (board.ways.some(({ id }) => id === way.value)) continue;
    const near = suggestionFor(
      way.value,
      board.ways.map(({ id }) => id),
    );
    report(valueSpot(line, way), {
      message: `Board ${board.head.name} has no way ${way.value}${near ? `: did you mean ${near}?` : "."}`,
      fixes: near ? [inPlaceOf(way, near)] : [],
    });
  }
  const [only] = ways;
  const way = at && ways.length === 1 ? board.ways.find(({ id }) => id === only?.value) : undefined;
  const runs = way && runsOf(way);
  if (!at || !runs || runs.places.has(at.value)) return;
  report(valueSpot(line, at), { message: `No run of way ${only?.value} goes to a point called “${at.value}”.` });
}
