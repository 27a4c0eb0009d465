import type { NameKind } from "../../../grammar/params.ts";
import { type Reference, referencesIn } from "../../analysis/references.ts";
import { runsOf } from "../../analysis/runs.ts";
import { nearest } from "../../model/arguments.ts";
import type { Installation } from "../../model/installation.ts";
import { installationRule, valueSpot } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

/** The names that could be meant at a place; nothing where a broken line may have defined more. */
function known({ names, board, way }: Reference, installation: Installation): readonly string[] | undefined {
  const unless = (broken: boolean | undefined, list: () => readonly string[]) => (broken ? undefined : list());
  switch (names) {
    case "board":
      return unless(installation.names.boards.has(""), () => [...installation.names.boards.keys()]);
    case "instrument":
      return unless(installation.head.facts.broken.includes(names), () => [...installation.names.instruments.keys()]);
    case "cable-type":
      return unless(installation.head.facts.broken.includes(names), () => [...installation.names.cableTypes.keys()]);
    case "rcd":
      return unless(board?.head.facts.broken.includes("rcd"), () =>
        (board?.head.facts.all("rcd") ?? []).map((rcd) => rcd.args.name.value),
      );
    case "point": {
      const runs = way && !way.facts.broken.includes("run") ? runsOf(way) : undefined;
      return runs && [...runs.places.keys()];
    }
    case "way":
      return undefined;
  }
}

const called: Readonly<Record<NameKind, string>> = {
  board: "No board of this installation is called",
  rcd: "This board has no RCD called",
  instrument: "No instrument is defined as",
  "cable-type": "No cable type is defined as",
  point: "No run of this way goes to a point called",
  way: "No way is called",
};

export default installationRule({
  id: "language/unknown-name",
  severity: "error",
  since: "0.1",
  title: "A name is used that nothing defines.",
  why: "What hangs on the name is not judged: a way behind an RCD that does not exist looks protected and is not. Correct the spelling, or define what is meant.",
  clauses: [],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Bench sockets" {
  behind  eats
          ^^^^
}`,
      good: `way 1 radial "Bench sockets" {
  behind  east
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 ring "Hall sockets" {
  run  A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S3  L-N 0.16 Ω  L-E 0.16 Ω
       ^^
  }
}`,
      good: `way 1 ring "Hall sockets" {
  run  A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S2  L-N 0.16 Ω  L-E 0.16 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    for (const reference of referencesIn(installation)) {
      const { name, fact, names, builtin } = reference;
      const list = builtin ? undefined : known(reference, installation);
      if (!list || list.includes(name.value)) continue;
      const near = nearest(name.value, list);
      const others = list.length === 0 ? "" : ` Known are ${list.slice(0, 8).join(", ")}.`;
      report(valueSpot(fact, name), {
        message: `${called[names]} “${name.value}”${near ? `: did you mean “${near}”?` : `.${others}`}`,
        fixes: near ? [inPlaceOf(name, near)] : [],
      });
    }
  },
});
