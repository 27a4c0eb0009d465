import type { CancellationToken } from "vscode-languageserver";
import { boardAt, installationAt, studyAt } from "../features/cursor.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { Part } from "./part.ts";
import { type WorksheetAnswer, type WorksheetQuestion, worksheetRequest } from "./protocol.ts";
import { badRequest, type Service } from "./service.ts";

interface About {
  readonly textDocument: { readonly uri: string };
  readonly position: WorksheetQuestion["position"];
}

const none = badRequest("There is no installation here: a worksheet needs its supply and its edition.");

type Refused = typeof none;

const written = () =>
  new Part(async () => ({
    ...(await import("../reports/worksheet/worksheet.ts")),
    ...(await import("../reports/setting/html.ts")),
    ...(await import("../reports/setting/markdown.ts")),
    ...(await import("../reports/setting/text.ts")),
  }));
type Written = ReturnType<typeof written>["now"];

/** The worksheet of what the cursor is in: a way, its board, or all of the installation. */
export function worksheets({ connection, ask }: Service): void {
  const part = written();
  const answer = ask<About, WorksheetAnswer | Refused>(
    worksheetRequest,
    none,
    (snapshot, { position }) => sheetAt(snapshot, position, part.now) ?? none,
    { part },
  );
  connection.onRequest<WorksheetAnswer, never>(
    worksheetRequest,
    async (question: Partial<WorksheetQuestion> | undefined, token: CancellationToken) => {
      const { uri, position } = question ?? {};
      if (typeof uri !== "string") return badRequest("A worksheet needs the address of its schedule.");
      return await answer({ textDocument: { uri }, position }, token);
    },
  );
}

function sheetAt(
  snapshot: Snapshot,
  position: WorksheetQuestion["position"],
  { worksheet, reportText, reportMarkdown, reportHtml }: Written,
): WorksheetAnswer | undefined {
  const segment = position && snapshot.positions.at(position)?.segment;
  const installation = segment ? installationAt(snapshot, segment) : snapshot.installations[0];
  if (!installation) return undefined;
  const board = segment && boardAt(snapshot, segment);
  const way = segment && studyAt(snapshot, segment)?.way;
  const report = worksheet(installation, { ...(board ? { board } : {}), ...(board && way ? { way } : {}) });
  return { title: report.title, text: reportText(report), markdown: reportMarkdown(report), html: reportHtml(report) };
}
