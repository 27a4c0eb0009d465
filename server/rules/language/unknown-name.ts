import { constructions } from "../../../grammar/choices.ts";
import type { Choices, NameKind } from "../../../grammar/params.ts";
import { memoByObject } from "../../circuit/kept.ts";
import { runsOf } from "../../circuit/runs.ts";
import { containmentNames } from "../../conduits/containment.ts";
import type { BoardHead, InstallationHead, Way } from "../../model/file.ts";
import type { Names } from "../../model/installation.ts";
import { suggestionFor } from "../../model/suggestions.ts";
import { boardReferences, ownReferences, type Reference } from "../../readings/references.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

interface Known {
  has(name: string): boolean;
  keys(): Iterable<string>;
}

/** The RCDs of a board and the points of a way; nothing where a broken line may have defined more. */
const rcdsOn = memoByObject((head: BoardHead): Known | undefined =>
  head.facts.isUnread("rcd") ? undefined : new Set(head.facts.all("rcd").map((rcd) => rcd.args.name.value)),
);
const pointsOn = memoByObject((way: Way): Known | undefined =>
  way.facts.isUnread("run") ? undefined : runsOf(way)?.places,
);

/** What a file that could not be read may define. */
const inFiles: ReadonlySet<NameKind> = new Set(["board", "instrument", "cable-type", "circuit-type"]);

/** The names that could be meant at a place. */
function known({ names, name, board, way }: Reference, all: Names, head: InstallationHead): Known | undefined {
  if (all.incomplete && inFiles.has(names)) return undefined;
  switch (names) {
    case "board":
      return all.boards.has(name.value) || !all.boards.has("") ? all.boards : undefined;
    case "instrument":
      return definedIn(all.instruments, name.value, names, all);
    case "cable-type":
      return definedIn(all.cableTypes, name.value, names, all);
    case "circuit-type":
      return definedIn(all.circuitTypes, name.value, names, all);
    case "rcd":
      return board && rcdsOn(board.head);
    case "containment":
      return containmentNames(board?.head, head);
    case "point":
      return way && pointsOn(way);
    case "way":
      return undefined;
  }
}

/** Whether a line that is not understood may define a name matters only to one that nothing else defines. */
function definedIn(table: Known, name: string, kind: NameKind, all: Names): Known | undefined {
  return table.has(name) || !all.unclear.has(kind) ? table : undefined;
}

/** Words of the language that may stand where a name may, so that one of them may be what was meant. */
const wordsBeside: Partial<Record<NameKind, Choices>> = {
  "cable-type": constructions,
  board: { supply: "The origin." },
};

const called: Readonly<Record<NameKind, string>> = {
  board: "No board of this installation is called",
  rcd: "This board has no RCD called",
  instrument: "No instrument is defined as",
  "cable-type": "No cable type is defined as",
  "circuit-type": "No circuit type is defined as",
  containment: "Neither this board nor the installation has a conduit or trunking called",
  point: "No run of this way goes to a point called",
  way: "No way is called",
};

const mostOffered = 4;

/** `fed-from A/2`: the board of a way that is named by its address. */
const ofAddress = (written: string, names: readonly string[]): string | undefined =>
  names.find((name) => written.startsWith(`${name}/`));

function checkOne(references: readonly Reference[], all: Names, head: InstallationHead, report: Reporter): void {
  for (const reference of references) {
    const { name, fact, names, builtin } = reference;
    const defined = builtin ? undefined : known(reference, all, head);
    if (!defined || defined.has(name.value)) continue;
    // No board feeds itself.
    const self = names === "board" ? reference.board?.head.name : undefined;
    const list = [...defined.keys()].filter((one) => one !== self);
    // One number is as near to another as any.
    const isNumber = /^\d+$/.test(name.value);
    const words = [...list, ...Object.keys(wordsBeside[names] ?? {})];
    const near = ofAddress(name.value, list) ?? (isNumber ? undefined : suggestionFor(name.value, words));
    const isFigure = isNumber && names === "rcd" && fact.word === "rcd";
    const here = list.length === 0 ? "" : ` Known here: ${list.slice(0, 8).join(", ")}.`;
    const others = isFigure ? " If it is a figure, write its unit, such as 30 mA or 24 ms." : here;
    report(valueSpot(fact, name), {
      message: `${called[names]} “${name.value}”${near ? `: did you mean “${near}”?` : `.${others}`}`,
      // Of a few names one is meant, or none: that is for whoever wrote the line.
      fixes: (near ? [near] : isFigure ? [] : list.slice(0, mostOffered)).map((one) => inPlaceOf(name, one)),
    });
  }
}

export default installationRule({
  id: "language/unknown-name",
  severity: "error",
  since: "0.1",
  title: "A name is used that is defined nowhere.",
  why: "What depends on the name is not judged: a way behind an RCD that does not exist looks protected and is not. Correct the spelling, or define what is meant.",
  clauses: [],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Bench sockets" {
  behind       eats
               ^^^^
}`,
      good: `way 1 radial "Bench sockets" {
  behind       east
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 ring "Hall sockets" {
  run          A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S3        L-N 0.16 Ω  L-E 0.16 Ω
       ^^
  }
}`,
      good: `way 1 ring "Hall sockets" {
  run          A 7 m S1 6 m S2 9 m A
  dead 2026-03-04 {
    at S2        L-N 0.16 Ω  L-E 0.16 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    checkOne(ownReferences(installation), installation.names, installation.head, report);
  },
  checkBoard({ board, context }, report) {
    checkOne(boardReferences(board), context.names, context.installation, report);
  },
});
