/** A line above each board and way: how it stands, its least margin, what is missing. The places are cheap, the text is not. */
import { networkOf } from "../boards/network.ts";
import { studyWay } from "../circuit/way.ts";
import type { Board, Way } from "../model/file.ts";
import type { BoardInPlace } from "../model/installation.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import { counted, isOneOf, listedUpTo } from "../text/words.ts";
import { showsMargin, type WayState, wayState } from "../views/way-state.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { boardAt, installationAt } from "./cursor.ts";

const lensModes = ["ways", "boards", "off"] as const;
/** Above boards and ways, above boards alone, or nowhere. */
export type LensMode = (typeof lensModes)[number];
export const isLensMode = (value: unknown): value is LensMode => isOneOf(lensModes, value);

interface LensPlace {
  readonly segment: Segment;
  readonly offset: number;
  /** `A/3`, `A`. */
  readonly reference: string;
}

/** Every board and way of the file itself, but for spare ways, which have nothing to say. */
export function lensPlaces({ file: { model } }: Snapshot): LensPlace[] {
  const boards = [...model.installations.flatMap((part) => part.boards), ...model.boards];
  return boards.flatMap(({ head, ways }) => [
    { segment: head.header.segment, offset: head.header.start, reference: head.name },
    ...ways
      .filter(({ kind }) => kind !== "spare")
      .map(({ id, segment, header }) => ({ segment, offset: header.start, reference: `${head.name}/${id}` })),
  ]);
}

/** What stands above one of them; nothing where no supply is known to judge it by. */
export function lensText(snapshot: Snapshot, { segment }: Pick<LensPlace, "segment">): string | undefined {
  const place = boardAt(snapshot, segment);
  if (!place) return undefined;
  const { board } = place;
  const way = board.ways.find((one) => one.segment === segment);
  return way ? wayText(snapshot, place, way) : boardText(snapshot, place);
}

function wayText(snapshot: Snapshot, place: BoardInPlace, way: Way): string {
  const { least, missing } = stateOf(snapshot, place, way);
  const found = snapshot.findings.filter(({ spot }) => spot.segment === way.segment);
  // What is not all there yet cannot be called sound.
  const verdict = gravest(found) ?? (missing.length > 0 ? undefined : soundWords);
  return [
    ...(verdict === undefined ? [] : [verdict]),
    ...(least && showsMargin(least, found) ? [`${least.name} ${least.left}`] : []),
    ...(missing.length > 0 ? [`missing: ${short(missing)}`] : []),
  ].join(" · ");
}

function boardText(snapshot: Snapshot, place: BoardInPlace): string {
  const { board } = place;
  const own = new Set(board.segments);
  const found = snapshot.findings.filter(({ spot }) => own.has(spot.segment));
  const ways = board.ways.filter(({ kind }) => kind !== "spare");
  const spare = board.ways.length - ways.length;
  const states = ways.map((way) => ({ way, state: stateOf(snapshot, place, way) }));
  const least = states
    .flatMap(({ way, state }) => (state.least ? [{ way, least: state.least }] : []))
    .filter(({ least }) => showsMargin(least, found))
    .sort((one, other) => other.least.used - one.least.used)[0];
  const lacking = states.filter(({ state }) => state.missing.length > 0).map(({ way }) => way.id);
  return [
    [
      ...(ways.length > 0 || spare === 0 ? [counted(ways.length, "way")] : []),
      ...(spare > 0 ? [`${spare} spare`] : []),
    ].join(", "),
    gravest(found, board) ?? soundWords,
    ...(least ? [`least margin: way ${least.way.id}, ${least.least.name} ${least.least.left}`] : []),
    ...(lacking.length > 0 ? [`incomplete: ${short(lacking)}`] : []),
  ].join(" · ");
}

function stateOf(snapshot: Snapshot, { board, context }: BoardInPlace, way: Way): WayState {
  const installation = installationAt(snapshot, board.head.header.segment);
  return wayState(studyWay(way, context), installation && networkOf(installation).nodeOf(board));
}

/** Errors, else warnings, and on a board the ways they are in; nothing where there are neither. */
function gravest(found: readonly Finding[], board?: Board): string | undefined {
  for (const [severity, one, many] of [
    ["error", "error", "errors"],
    ["warning", "warning", "warnings"],
  ] as const) {
    const own = found.filter((finding) => finding.severity === severity);
    if (own.length === 0) continue;
    const ways = board?.ways.filter(({ segment }) => own.some(({ spot }) => spot.segment === segment)) ?? [];
    const where = ways.length > 0 ? ` (${ways.length === 1 ? "way" : "ways"} ${short(ways.map(({ id }) => id))})` : "";
    return `${own.length} ${own.length === 1 ? one : many}${where}`;
  }
  return undefined;
}

const soundWords = "no errors, no warnings";

const short = (names: readonly string[]): string => listedUpTo(4, names);
