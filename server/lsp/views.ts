/** The live view: plain data for the board that is shown, and nothing of the others but their names. */
import type { CancellationToken, Position } from "vscode-languageserver";
import { studiesOn } from "../boards/network.ts";
import { boardAt, installationAt, studyAt } from "../features/cursor.ts";
import type { BoardInPlace, Installation } from "../model/installation.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import { isViewKind, type ViewKind } from "../views/kinds.ts";
import { fileOfSegment, resultOf, type Snapshot, type Workspace } from "../workspace/workspace.ts";
import { editOf, locationOf, rangeOf } from "./convert.ts";
import { Part } from "./part.ts";
import { type At, placed } from "./placed.ts";
import { badRequest, findings, type Needs, type Service } from "./service.ts";
import {
  type BoardName,
  type EntryAnswer,
  type EntryQuestion,
  entryRequest,
  type ViewAnswer,
  type ViewQuestion,
  viewRequest,
} from "./view-protocol.ts";

interface About {
  readonly textDocument: { readonly uri: string };
  readonly view: ViewKind;
  readonly board: string | undefined;
  readonly position: Position | undefined;
}

const drawn = () => new Part(() => import("../views/view.ts"));
type Drawn = ReturnType<typeof drawn>["now"];

export function views({ connection, ask, workspace }: Service): void {
  const part = drawn();
  const answerAfter = (needs: Pick<Needs<ViewAnswer>, "findings" | "before">) =>
    ask<About, ViewAnswer>(
      viewRequest,
      nothing("The schedule is not read yet."),
      (snapshot, about) => answerOf(workspace, snapshot, about, part.now),
      { ...needs, part },
    );
  const live = answerAfter(findings);
  // A paper is given or refused by all that is found, wherever it stands.
  const paper = answerAfter({
    findings: () => "all",
    before: ({ installations }) => part.now.inspectionSteps(installations),
  });
  connection.onRequest<ViewAnswer, never>(
    viewRequest,
    async (question: Partial<ViewQuestion> | undefined, token: CancellationToken) => {
      const { uri, view, board, position } = question ?? {};
      if (typeof uri !== "string") return badRequest("A view needs the address of its schedule.");
      if (!isViewKind(view)) return badRequest(`“${view}” is not a view.`);
      return await (view === "inspection" ? paper : live)({ textDocument: { uri }, view, board, position }, token);
    },
  );
}

/** One reading, as the edit that writes it: whoever asked applies it, so that undoing it is the editor's own. */
export function entries({ connection, ask, workspace }: Service): void {
  const part = new Part(async () => ({
    ...(await import("../views/board.ts")),
    ...(await import("../views/entry.ts")),
  }));
  const refused: EntryAnswer = { problem: "The schedule is not read yet." };
  const answer = ask<About & { readonly entry: EntryQuestion }, EntryAnswer>(
    entryRequest,
    refused,
    (snapshot, { entry }) => {
      const place = boardsOf(snapshot.installations).find(({ key }) => key === entry.board)?.place;
      const studies = place ? studiesOn(place).filter(({ isSpare }) => !isSpare) : [];
      const { keysOf, written } = part.now;
      const keys = keysOf(studies.map(({ way }) => way.id));
      const key = entry.point === undefined ? entry.row : entry.row.slice(0, -entry.point.length - 1);
      const study = studies[keys.indexOf(key)];
      if (!study) return { problem: "That way is not there any more." };
      const result = written(study, entry);
      if (!("edit" in result)) return result;
      const { segment } = study.way;
      const file = fileOfSegment(snapshot, segment);
      if (!file) return { problem: "That way is not there any more." };
      const { range, newText } = editOf(workspace.positionsOf(file), segment, result.edit);
      const version = workspace.version(file.path);
      return {
        edit: { range, newText },
        written: result.value,
        ...(version === undefined ? {} : { version }),
        ...(file === snapshot.file ? {} : { uri: workspace.uri(file.path) }),
      };
    },
    { part },
  );
  connection.onRequest<EntryAnswer, never>(
    entryRequest,
    async (question: (Partial<EntryQuestion> & { readonly uri?: unknown }) | undefined, token: CancellationToken) => {
      const { uri } = question ?? {};
      if (typeof uri !== "string") return badRequest("A reading needs the address of its schedule.");
      const entry = entryFrom(question);
      if (!entry) return badRequest("A reading needs its board, row, column, text and day.");
      return await answer(
        { textDocument: { uri }, view: "tests", board: entry.board, position: undefined, entry },
        token,
      );
    },
  );
}

function entryFrom(question: Partial<EntryQuestion> | undefined): EntryQuestion | undefined {
  const { board, row, column, text, day, ...rest } = question ?? {};
  const needed = [board, row, column, text, day];
  if (needed.some((one) => typeof one !== "string")) return undefined;
  const optional = ["point", "instrument", "why", "draft"] as const;
  const given = optional.flatMap((name) => (typeof rest[name] === "string" ? [[name, rest[name]] as const] : []));
  return { board, row, column, text, day, ...Object.fromEntries(given) } as EntryQuestion;
}

const nothing = (why: string): ViewAnswer => ({ title: "", boards: [], nothing: why });

function answerOf(
  workspace: Workspace,
  snapshot: Snapshot,
  { view, board, position }: About,
  { viewOf }: Drawn,
): ViewAnswer {
  const segment = position && snapshot.positions.at(position)?.segment;
  const all = boardsOf(snapshot.installations);
  const chosen = chosenBoard(snapshot, all, board, segment);
  const version = snapshot.version === undefined ? {} : { version: snapshot.version };
  if (!chosen) {
    const why =
      snapshot.installations.length === 0 ? "There is no installation in this file." : "No board is written yet.";
    return { ...nothing(why), ...version };
  }
  const way = segment && studyAt(snapshot, segment)?.way;
  const onBoard = way && boardAt(snapshot, segment) === chosen.place ? way : undefined;
  const { installation, place } = chosen;
  const found = viewOf(
    view,
    { installations: snapshot.installations, installation, place, way: onBoard },
    view === "inspection" ? resultOf(snapshot).findings : findingsAround(snapshot, place),
  );
  return {
    ...version,
    title: chosen.installation.head.title,
    boards: all.map(({ key, name, title }): BoardName => ({ key, name, title })),
    board: chosen.key,
    ...(onBoard ? { way: onBoard.id } : {}),
    content: placed(found, (mark) => atOf(workspace, snapshot, mark.segment, mark.offset)),
  };
}

interface Choice {
  readonly key: string;
  readonly name: string;
  readonly title: string;
  readonly installation: Installation;
  readonly place: BoardInPlace;
}

/** A board is known by its name from one edit to the next; in a file of several installations by their order too. */
function boardsOf(installations: readonly Installation[]): Choice[] {
  const seen = new Set<string>();
  return installations.flatMap((installation, index) =>
    installation.boards.flatMap((place): Choice[] => {
      const { name, title } = place.board.head;
      const key = index === 0 ? name : `${index + 1}:${name}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ key, name, title, installation, place }];
    }),
  );
}

/** The one that was asked for; else the one the cursor is in; else the first. */
function chosenBoard(
  snapshot: Snapshot,
  all: readonly Choice[],
  key: string | undefined,
  segment: Segment | undefined,
): Choice | undefined {
  const named = key === undefined ? undefined : all.find((one) => one.key === key);
  if (named) return named;
  const at = segment && boardAt(snapshot, segment);
  const installation = segment && installationAt(snapshot, segment);
  return (
    (at && all.find(({ place }) => place === at)) ?? all.find((one) => one.installation === installation) ?? all[0]
  );
}

/** What is found so far in the file a board stands in. */
function findingsAround({ projects, file }: Snapshot, { board }: BoardInPlace): readonly Finding[] {
  const [home] = projects;
  const own = file.document.segments.includes(board.head.header.segment)
    ? file
    : fileOfSegment({ projects }, board.head.header.segment);
  return home && own ? home.soFar(own) : [];
}

function atOf(workspace: Workspace, snapshot: Snapshot, segment: Segment, offset: number): At | undefined {
  const here = snapshot.positions.has(segment);
  const location = here ? undefined : locationOf(workspace, snapshot, { segment, start: offset, end: offset });
  const range = here ? rangeOf(snapshot.positions, { segment, start: offset, end: offset }) : location?.range;
  if (!range) return undefined;
  const { line, character } = range.start;
  const rest = segment.text.slice(offset).split("\n").length - 1;
  // A block's text may end with the line break behind it.
  const last = line + Math.max(0, segment.text.endsWith("\n") ? rest - 1 : rest);
  return { line, character, last, ...(location ? { uri: location.uri } : {}) };
}
