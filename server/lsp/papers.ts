import type { CancellationToken } from "vscode-languageserver";
import type { Failure } from "../features/past.ts";
import { fills, paperKinds, scheduleFormats } from "../reports/common/paper-kinds.ts";
import { readSettings } from "../settings/read.ts";
import { withColumns } from "../settings/remember.ts";
import { settingsFile } from "../settings/settings.ts";
import { Positions } from "../syntax/document.ts";
import { isDay } from "../text/days.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import { rangeOf } from "./convert.ts";
import {
  type EnterAnswer,
  type EnterQuestion,
  enterReadingsRequest,
  type PaperAnswer,
  type PaperQuestion,
  paperRequest,
} from "./paper-protocol.ts";
import type { EnteredFiles, PaperOffice, Runtime } from "./runtime.ts";
import { badRequest, type Service } from "./service.ts";

const none = badRequest("There is no such schedule.");
type Refused = typeof none;

const noOffice = badRequest("Papers and readings from files need the editor on a desktop, or the command line.");

interface About {
  readonly textDocument: { readonly uri: string };
}

/** Papers as files, and readings that come back from one: the text of all files is as it stands in the editor. */
export function papers(
  service: Service,
  office: PaperOffice | undefined,
  settings: Runtime["settings"] | undefined,
): void {
  const { connection, ask } = service;
  const look = (findings: "all" | "none") =>
    ask<About, { readonly snapshot: Snapshot } | Refused>(paperRequest, none, (snapshot) => ({ snapshot }), {
      findings: () => findings,
    });
  const [checked, read] = [look("all"), look("none")];
  connection.onRequest<PaperAnswer, never>(
    paperRequest,
    async (question: Unread<PaperQuestion>, token: CancellationToken) => {
      if (!office) return noOffice;
      const asked = paperAsked(question ?? {});
      if ("failure" in asked) return badRequest(asked.failure);
      const found = await checked({ textDocument: asked }, token);
      if (!("snapshot" in found)) return found;
      const made = await office.paper(asked, found.snapshot);
      return "failure" in made ? badRequest(made.failure) : made;
    },
  );
  connection.onRequest<EnterAnswer, never>(
    enterReadingsRequest,
    async (question: Unread<EnterQuestion>, token: CancellationToken) => {
      if (!office) return noOffice;
      const asked = readingsAsked(question ?? {});
      if ("failure" in asked) return badRequest(asked.failure);
      const found = await read({ textDocument: asked }, token);
      if (!("snapshot" in found)) return found;
      const house = settings?.(asked.uri, settingsFile);
      const known = house ? readSettings(house.text).settings.columns : [];
      const entered = await office.entered({ ...asked, column: [...known, ...asked.column] }, found.snapshot);
      if ("failure" in entered) return badRequest(entered.failure);
      const kept = asked.column.length > 0 && !entered.asks ? withColumns(house?.text, asked.column) : undefined;
      return {
        ...answerOf(service.workspace, entered),
        ...(kept === undefined ? {} : { settings: { ...(house ? { uri: house.uri } : {}), text: kept } }),
      };
    },
  );
}

/** What a client sends, of which nothing is known yet. */
type Unread<Question> = { readonly [Name in keyof Question]?: unknown } | undefined;

function paperAsked({
  uri,
  paper,
  format,
  fill,
  printed,
}: NonNullable<Unread<PaperQuestion>>): PaperQuestion | Failure {
  if (typeof uri !== "string" || !isOneOf(paperKinds, paper) || !isOneOf(scheduleFormats, format))
    return { failure: "A paper needs the address of its schedule, its kind and its format." };
  if (fill !== undefined && !isOneOf(fills, fill))
    return { failure: "A paper is “filled”, “blank”, or “last”: blank beside what was read last." };
  if (printed !== undefined && (typeof printed !== "string" || !isDay(printed)))
    return { failure: "The day a paper is printed is written as “2026-03-05”." };
  return { uri, paper, format, ...(fill ? { fill } : {}), ...(printed ? { printed } : {}) };
}

function readingsAsked({ uri, name, base64, column, on }: NonNullable<Unread<EnterQuestion>>) {
  if (typeof uri !== "string" || typeof name !== "string" || typeof base64 !== "string")
    return { failure: "Readings need the address of their schedule, and the file they stand in." };
  const told = Array.isArray(column) ? column.filter((one) => typeof one === "string") : [];
  return { uri, name, base64, column: told, ...(typeof on === "string" ? { on } : {}) };
}

const isOneOf = <Value>(all: readonly Value[], value: unknown): value is Value => all.some((one) => one === value);

/** Each segment that changed as the smallest edit of it, so that cursors and folds elsewhere stay. */
function answerOf(workspace: Workspace, { files, report, misfits, asks }: EnteredFiles): EnterAnswer {
  const edits = files.flatMap(({ path, document, segments }) => {
    const positions = new Positions(document);
    return [...segments].map(([segment, text]) => {
      const { start, end, text: newText } = smallest(segment.text, text);
      return { uri: workspace.uri(path), range: rangeOf(positions, { segment, start, end }), newText };
    });
  });
  return { edits, report, misfits, ...(asks ? { asks } : {}) };
}

/** What differs between two texts, without what they have in common at either end. */
function smallest(before: string, after: string): TextEdit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let same = 0;
  while (same < most - start && before.at(-1 - same) === after.at(-1 - same)) same++;
  return { start, end: before.length - same, text: after.slice(start, after.length - same) };
}
