/** A board as a part of the schedule: its head, a row a circuit, the RCDs its ways share, notes, instruments. */

import { boardImpedance } from "../../circuit/board-impedance.ts";
import { deviceName } from "../../circuit/describe.ts";
import { studySupply } from "../../circuit/supply.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { isThreePhase } from "../../model/three-lines.ts";
import type { Fact, FactOf, Facts } from "../../model/values.ts";
import { boardTestDays, dueOf, factsOf } from "../../readings/instruments.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { departuresIn } from "../../rules/frame/departures.ts";
import { listed } from "../../text/words.ts";
import type { Fill } from "../common/paper-kinds.ts";
import { written } from "../common/written.ts";
import { type Block, type Cell, type Grid, paragraph } from "../setting/document.ts";
import { type Noted, nothing } from "./cell.ts";
import { leftOutWhereUnused, paperBands } from "./columns.ts";
import { type Cells, lineCells, wayCells } from "./row.ts";
import { sharedRcds } from "./shared-rcds.ts";

interface BoardSheet {
  readonly place: BoardInPlace;
  readonly studies: readonly WayStudy[];
}

export const sheetOf = (place: BoardInPlace): BoardSheet => ({
  place,
  studies: place.board.ways.map((way) => studyWay(way, place.context)),
});

export function boardBlocks(sheet: BoardSheet, installation: Installation, fill: Fill): Block[] {
  const { grid, left } = gridOf(sheet, fill);
  return [
    ...unreadBlocks(sheet, installation),
    { kind: "particulars", rows: headRows(sheet.place, installation) },
    grid,
    ...(left === "" ? [] : [paragraph(left)]),
    ...sharedRcds(sheet.place, sheet.studies, fill),
    paragraph(instrumentsText(sheet.place, installation)),
  ];
}

/** A sheet that lacks what could not be read, or shows one side of a merge conflict, must not look whole. */
function unreadBlocks({ place, studies }: BoardSheet, { head, supply }: Installation): Block[] {
  const ways = studies
    .filter(({ facts, way }) => hasUnread(facts) || conflictLine.test(way.segment.text))
    .map(({ way }) => way.id);
  const where = [
    ...(head.facts.broken.length > 0 ? ["the installation"] : []),
    ...(supply && hasUnread(supply) ? ["the supply"] : []),
    ...(hasUnread(place.board.head.facts) ? ["the board"] : []),
    ...(ways.length > 0 ? [`${ways.length === 1 ? "way" : "ways"} ${listed(ways)}`] : []),
  ];
  if (where.length === 0) return [];
  return [
    {
      kind: "caution",
      text: `Lines of ${listed(where)} could not be read: what they state is missing here, or shown wrongly. Put them right before this is handed over.`,
    },
  ];
}

const conflictLine = /^<{7}/m;

const hasUnread = ({ broken, list }: Facts): boolean =>
  broken.length > 0 || list.some(({ inner }) => inner !== undefined && hasUnread(inner));

/** What feeds the board, and what was found at it. */
function headRows({ board, context }: BoardInPlace, installation: Installation): [string, string][] {
  const { facts } = board.head;
  const text = (fact: Fact | undefined): string => (fact ? written(fact) : "");
  const from = facts.one("fed-from")?.args.from.value ?? "";
  const feeder = context.upstream[0]?.feeder;
  const device = feeder && upstreamDevice(feeder, context, installation);
  const impedance = boardImpedance(context);
  const ownPlan = planBoard(context);
  const origin = from === "supply" ? planSupply(installation) : [];
  const found = (name: string, plan = ownPlan): string =>
    plan.find(({ name: one }) => one.startsWith(name))?.recorded?.text ?? "";
  const asOrigin = (text: string): string => (text === "" ? "" : `${text}, as at the origin`);
  // Where the board is the first, what was found at the origin was found at it.
  const foundHere = (name: string): string => found(name) || found(name, origin);
  const rows: [string, string][] = [
    ["Location", facts.one("location")?.args.text.value ?? ""],
    [
      "Fed from",
      [from, device ?? (from === "supply" ? text(installation.supply?.one("cutout")) : "")].filter(Boolean).join(", "),
    ],
    ["Earthing", studySupply(context).earthing ?? ""],
    ["Phases", isThreePhase(context) ? "three" : "one"],
    ["Main switch", text(facts.one("main-switch"))],
    ["Zdb", found("Zdb") || (impedance ? `${impedance.value} Ω, as ${impedance.name}` : "")],
    ["Ipf", found("Ipf") || asOrigin(found("Ipf", origin))],
    ["Polarity of the supply", foundHere("Polarity")],
    ["Phase sequence", foundHere("Phase sequence")],
    [
      "Surge protection",
      surgeText(facts.one("spd") ?? (from === "supply" ? installation.supply?.one("spd") : undefined)),
    ],
  ];
  return rows
    .map(([name, fact]): [string, string] => [name, fact === "" ? "not stated" : fact])
    .filter(([name, fact]) => name !== "Phase sequence" || fact !== "not stated");
}

const surgeText = (spd: FactOf<"board" | "supply", "spd"> | undefined): string =>
  spd
    ? [
        [spd.args.fitted.value.replace("-", " "), spd.args.type?.value ?? ""].filter(Boolean).join(" "),
        ...(spd.args.why ? [spd.args.why.value] : []),
      ].join(": ")
    : "";

function upstreamDevice(
  feeder: BoardInPlace["board"]["ways"][number],
  { upstream }: BoardInPlace["context"],
  { boards }: Installation,
): string | undefined {
  const above = boards.find(({ board }) => board.head === upstream[0]?.board);
  const device = above && studyWay(feeder, above.context).device;
  return device && `way ${upstream[0]?.board.name}/${feeder.id}, ${deviceName(device)}`;
}

interface Laid {
  readonly grid: Grid;
  /** Which columns are not there, and why. */
  readonly left: string;
}

/** Notes below the grid, each once, by the order in which they were first named. */
class Notes {
  readonly list: string[] = [];

  numberOf(note: string): string {
    if (!this.list.includes(note)) this.list.push(note);
    return String(this.list.indexOf(note) + 1);
  }
}

function gridOf({ studies }: BoardSheet, fill: Fill): Laid {
  const notes = new Notes();
  const ways = studies.map((study): readonly Cells[] => {
    const cells = wayCells(study, fill);
    const own = ownNotes(study.facts).map((note) => notes.numberOf(note));
    const noted: Cells = own.length > 0 ? { notes: { text: own.join(" "), kind: "said" } } : {};
    return [{ ...cells, ...noted }, ...lineCells(study, fill)];
  });
  const unused = leftOutWhereUnused.filter(([keys]) =>
    keys.every((key) => ways.flat().every((row) => isIdle(row[key]))),
  );
  const out = new Set(unused.flatMap(([keys]) => keys));
  const bands = paperBands
    .map((band) => ({ ...band, columns: band.columns.filter(({ key }) => !out.has(key)) }))
    .filter(({ columns }) => columns.length > 0);
  const keys = bands.flatMap(({ columns }) => columns.map(({ key }) => key));
  const marked = ({ note, ...cell }: Noted): Cell =>
    note === undefined ? cell : { ...cell, mark: notes.numberOf(note) };
  const rows = ways.flatMap((lines, at) =>
    lines.map((row, line) =>
      keys.map((key) => {
        const cell = row[key] ?? nothing;
        const mayBeEmpty = line > 0 || key === "notes" || studies[at]?.isSpare;
        return cell.kind === "nothing" && !mayBeEmpty ? notStated : marked(cell);
      }),
    ),
  );
  const hasLines = ways.some((lines) => lines.length > 1);
  return { grid: { kind: "grid", bands, rows, notes: notes.list }, left: wordsOnColumns(unused, hasLines) };
}

/** Which columns are not there, each only once, and what stands under a circuit of three lines. */
function wordsOnColumns(unused: typeof leftOutWhereUnused, hasLines: boolean): string {
  const named = unused.filter(
    ([some], at) => !unused.some(([other], before) => before < at && some.every((key) => other.includes(key))),
  );
  return [
    ...(named.length === 0
      ? []
      : [`Columns that would be empty are left out: ${named.map(([, sentence]) => sentence).join(", ")}.`]),
    ...(hasLines
      ? [
          "Under a circuit of three lines stand those of each; between live conductors, the lower to the next line and to neutral.",
        ]
      : []),
  ].join(" ");
}

/** Nothing stands for itself in a cell: what is not stated has a sign. */
const notStated: Cell = { text: "–", kind: "nothing" };

const isIdle = (cell: Noted | undefined): boolean =>
  cell === undefined ||
  cell.kind === "nothing" ||
  (cell.kind === "absent" && cell.note === undefined && cell.text === "N/A");

/** Limitations stand with their cells; what is departed from, with the circuit. */
function ownNotes(facts: Facts<"way">): string[] {
  return departuresIn(facts, undefined, undefined).map(({ rule, reason }) => `departure from ${rule}: ${reason}`);
}

function instrumentsText({ board }: BoardInPlace, { names }: Installation): string {
  const days = boardTestDays(board);
  const used = [...new Set(days.flatMap((day) => day.with.map(({ value }) => value)))];
  const on = days.map((day) => day.on.value).sort();
  const list = used.map((name) => {
    const instrument = names.instruments.get(name)?.[0];
    const facts = instrument && factsOf(instrument);
    const serial = facts?.one("serial")?.args.text.value;
    // What was in force on the last of these days: a calibration since then says nothing of them.
    const due = facts && dueOf(facts, on.at(-1));
    const title = instrument?.args.title?.value;
    return [
      `${name}${title ? `, ${title}` : ""}`,
      ...(serial ? [`no. ${serial}`] : []),
      ...(due ? [`calibration due ${due}`] : []),
    ].join(", ");
  });
  const dates = on.length === 0 ? "" : ` Tested ${on[0]}${on.at(-1) === on[0] ? "" : ` to ${on.at(-1)}`}.`;
  return `Instruments: ${list.length > 0 ? list.join("; ") : "______________________"}.${dates}`;
}
