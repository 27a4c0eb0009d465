/** What a schedule was, as git knows it: only where the server has a disk. */
import type { Failure } from "../features/past.ts";
import { canonical, nameOfUri, resolveUri } from "../workspace/uri.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import { Part } from "./part.ts";
import {
  type BesideAnswer,
  besideRequest,
  type PastAnswer,
  type PastQuestion,
  pastRequest,
  type RevisionsAnswer,
  revisionsRequest,
  type TimelineAnswer,
  type TimelineQuestion,
  timelineRequest,
} from "./past-protocol.ts";
import type { PastRuntime } from "./runtime.ts";
import { badRequest, type Service } from "./service.ts";

const compared = () =>
  new Part(async () => ({
    ...(await import("../features/past.ts")),
    ...(await import("../reports/setting/markdown.ts")),
  }));

type Refused = ReturnType<typeof badRequest>;
type Compared = ReturnType<typeof compared>["now"];

export function past({ connection, workspace }: Service, git: PastRuntime | undefined): void {
  const part = compared();

  /** A request on a file of the disk; whatever it cannot be answered for is reported in a sentence. */
  const on = <Q extends { readonly uri: string }, A>(
    method: string,
    isWhole: (question: Partial<Q>) => question is Q,
    work: (question: Q, git: PastRuntime) => Promise<A | Refused | Failure>,
  ): void => {
    const handler = async (asked: Partial<Q> | undefined): Promise<A | Refused> => {
      const question = asked ?? {};
      if (!isWhole(question)) return badRequest("This needs the address of a schedule and what is asked of it.");
      if (!git) return badRequest("Here the server has no disk, so it knows no revisions.");
      const answer = await work(question, git);
      return isFailure(answer) ? badRequest(answer.failure) : answer;
    };
    connection.onRequest(method, handler as never);
  };
  const loaded = async (): Promise<Compared> => {
    await part.load();
    return part.now;
  };

  on<{ uri: string }, RevisionsAnswer>(revisionsRequest, hasUri, revisions);
  on<PastQuestion, PastAnswer>(pastRequest, hasRevision, ({ uri, revision }, disk) => disk.text(uri, revision));
  on<PastQuestion, BesideAnswer>(besideRequest, hasRevision, async (question, disk) =>
    beside(workspace, await loaded(), question, disk),
  );
  on<TimelineQuestion, TimelineAnswer>(timelineRequest, hasPosition, async (question, disk) =>
    timeline(workspace, await loaded(), question, disk),
  );
}

async function snapshotOf(workspace: Workspace, uri: string): Promise<Snapshot | Failure> {
  const path = canonical(uri);
  if (!workspace.isLoaded(path)) await workspace.load(path);
  return workspace.snapshot(path) ?? { failure: "There is no such schedule." };
}

async function revisions({ uri }: { readonly uri: string }, disk: PastRuntime): Promise<RevisionsAnswer | Failure> {
  const found = await disk.commits(uri);
  if ("failure" in found) return found;
  return { revisions: found.commits.map(({ id, author, when, subject }) => ({ id, author, when, subject })) };
}

/** A schedule compared with what it was at a revision, as a report and line by line. */
async function beside(
  workspace: Workspace,
  { besideRevision, reportMarkdown }: Compared,
  { uri, revision }: PastQuestion,
  disk: PastRuntime,
): Promise<BesideAnswer | Failure> {
  const snapshot = await snapshotOf(workspace, uri);
  if ("failure" in snapshot) return snapshot;
  const read = (path: string) => disk.text(workspace.uri(path), revision);
  const found = await besideRevision(snapshot, revision, read, resolveUri);
  if ("failure" in found) return found;
  return {
    title: found.report.title,
    markdown: reportMarkdown(found.report),
    lines: found.lines.flatMap(({ spot, text, detail, isGrave }) =>
      snapshot.positions.has(spot.segment)
        ? [{ line: snapshot.positions.place(spot.segment, spot.start).line, text, detail, isGrave }]
        : [],
    ),
  };
}

/** What the reading at a position was, over all commits of its file. */
async function timeline(
  workspace: Workspace,
  { timelineAt, reportMarkdown }: Compared,
  { uri, position }: TimelineQuestion,
  disk: PastRuntime,
): Promise<TimelineAnswer | Failure> {
  const snapshot = await snapshotOf(workspace, uri);
  if ("failure" in snapshot) return snapshot;
  const at = snapshot.positions.at(position);
  const found = await disk.commits(uri);
  if ("failure" in found) return found;
  if (!at) return { failure: "There is no such line." };
  const report = timelineAt(snapshot, at.segment, at.offset, nameOfUri(uri), found);
  return "failure" in report ? report : { title: report.title, markdown: reportMarkdown(report) };
}

const isFailure = (answer: unknown): answer is Failure =>
  typeof answer === "object" && answer !== null && "failure" in answer && typeof answer.failure === "string";

const hasUri = (question: { readonly uri?: unknown }): question is { uri: string } => typeof question.uri === "string";
const hasRevision = (question: Partial<PastQuestion>): question is PastQuestion =>
  typeof question.revision === "string" && hasUri(question);
const hasPosition = (question: Partial<TimelineQuestion>): question is TimelineQuestion =>
  typeof question.position?.line === "number" && typeof question.position.character === "number" && hasUri(question);
