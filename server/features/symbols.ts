import { amps, plain } from "../calc/result.ts";
import { wordAt } from "../model/fact-values.ts";
import type { Board, InstallationPart, Way } from "../model/file.ts";
import type { Fact } from "../model/values.ts";
import { factSpot, type Spot } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import type { Snapshot } from "../workspace/workspace.ts";

type SymbolKind = "installation" | "supply" | "board" | "way" | "instrument" | "cable-type" | "circuit-type";

/** An entry of the outline: from its first line to its last, with the line that is gone to. */
export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly header: Spot;
  readonly end: Spot;
  readonly children: readonly OutlineSymbol[];
}

/** Installation, supply, boards and their ways, with what a person looks for beside each. */
export function symbols(snapshot: Snapshot): OutlineSymbol[] {
  const { model, document } = snapshot.file;
  const lasts = lastSegments(document.segments);
  return [
    ...definitions(model.facts.list),
    ...model.installations.map((part) => installationSymbol(part, lasts)),
    ...model.boards.map((board) => boardSymbol(board, lasts)),
  ];
}

/** The segment that ends each installation and board, by the one that begins it. */
function lastSegments(segments: readonly Segment[]): ReadonlyMap<Segment, Segment> {
  const lasts = new Map<Segment, Segment>();
  const open: Segment[] = [];
  for (const segment of segments) {
    if (segment.ends) open.length = Math.max(0, open.length - segment.ends);
    if (segment.kind === "open") {
      if (!(segment.word === "board" && open.at(-1)?.word === "installation")) open.length = 0;
      open.push(segment);
    }
    for (const one of open) lasts.set(one, segment);
    if (segment.kind === "close" && segment.fault !== "extra-close") open.pop();
  }
  return lasts;
}

function installationSymbol({ head, boards }: InstallationPart, lasts: ReadonlyMap<Segment, Segment>): OutlineSymbol {
  const { header, facts } = head;
  const standard = facts.one("standard")?.args.edition.value;
  const stage = facts.one("stage")?.args.stage.value;
  const supply = facts.one("supply");
  return {
    name: head.title || "installation",
    detail: [standard, stage].filter(Boolean).join(" · "),
    kind: "installation",
    header: factSpot(header),
    end: endOfSegment(lasts.get(header.segment) ?? header.segment),
    children: [
      ...(supply ? [plainSymbol("supply", supply, "supply", earthingOf(supply))] : []),
      ...definitions(facts.list),
      ...boards.map((board) => boardSymbol(board, lasts)),
    ],
  };
}

const earthingOf = (supply: Fact): string =>
  wordAt(
    supply.inner?.list.find(({ word }) => word === "earthing"),
    "system",
  ) ?? "";

function boardSymbol({ head, ways }: Board, lasts: ReadonlyMap<Segment, Segment>): OutlineSymbol {
  return {
    name: head.name || "board",
    detail: head.title,
    kind: "board",
    header: factSpot(head.header),
    end: endOfSegment(lasts.get(head.header.segment) ?? head.header.segment),
    children: ways.map(waySymbol),
  };
}

const waySymbol = (way: Way): OutlineSymbol =>
  plainSymbol("way", way.header, `${way.id} ${way.title || (way.kind ?? "")}`.trim() || "way", wayDetail(way));

/** `ring · B32 · 2.5/1.5 mm²` */
function wayDetail({ kind, title, facts }: Way): string {
  const device = facts.one("device")?.args;
  const cable = facts.one("cable")?.args;
  const rating = device?.curve
    ? `${device.curve.curve}${device.curve.rating}`
    : device?.rating && amps(device.rating.value);
  const sizes = cable?.line
    ? `${cable.parallel ? `${cable.parallel.value} × ` : ""}${[cable.line, ...(cable.cpc ? [cable.cpc] : [])].map(({ value }) => plain(value)).join("/")} mm²`
    : cable?.use?.value;
  // A way without a title goes by its kind, which then need not stand twice.
  return [title === "" ? undefined : kind, rating, sizes].filter((part) => part !== undefined).join(" · ");
}

function definitions(facts: readonly Fact[]): OutlineSymbol[] {
  return facts.flatMap((fact) => {
    if (fact.word !== "instrument" && fact.word !== "cable-type" && fact.word !== "circuit-type") return [];
    return [plainSymbol(fact.word, fact, wordAt(fact, "name") ?? fact.word, wordAt(fact, "title") ?? "")];
  });
}

function plainSymbol(kind: SymbolKind, fact: Fact, name: string, detail: string): OutlineSymbol {
  const { segment, end } = fact;
  return { name, detail, kind, header: factSpot(fact), end: { segment, start: end, end }, children: [] };
}

const endOfSegment = (segment: Segment): Spot => {
  const end = segment.text.trimEnd().length;
  return { segment, start: end, end };
};
