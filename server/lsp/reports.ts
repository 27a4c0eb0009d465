import type { CancellationToken } from "vscode-languageserver";
import { type ReportKind, reportKinds } from "../features/report-kinds.ts";
import { isOneOf } from "../text/words.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { Part } from "./part.ts";
import { type ReportAnswer, type ReportQuestion, reportRequest } from "./protocol.ts";
import { badRequest, type Service } from "./service.ts";

type About = ReportQuestion & { readonly textDocument: { readonly uri: string } };

const none = badRequest("There is no such schedule.");
type Refused = typeof none;

const written = () =>
  new Part(async () => ({
    ...(await import("../features/report.ts")),
    ...(await import("../reports/setting/markdown.ts")),
  }));
type Written = ReturnType<typeof written>["now"];

/** Reports of the way, the board or the installation the cursor is in, as Markdown. */
export function reports({ connection, ask }: Service): void {
  const part = written();
  const answer = ask<About, ReportAnswer | Refused>(
    reportRequest,
    none,
    (snapshot, about) => reportAt(snapshot, about, part.now),
    { findings: () => "all", part },
  );
  connection.onRequest<ReportAnswer, never>(
    reportRequest,
    async (question: Partial<ReportQuestion> | undefined, token: CancellationToken) => {
      const { uri, kind, of } = question ?? {};
      if (typeof uri !== "string") return badRequest("A report needs the address of its schedule.");
      if (!isKind(kind)) return badRequest(`“${kind}” is not a report: there are ${reportKinds.join(", ")}.`);
      if (of !== undefined && typeof of !== "string") return badRequest("A way or a board is named by its reference.");
      return await answer({ ...question, uri, kind, textDocument: { uri } }, token);
    },
  );
}

const isKind = (kind: unknown): kind is ReportKind => isOneOf(reportKinds, kind);

function reportAt(
  snapshot: Snapshot,
  { kind, position, of }: About,
  { referenceOf, reportOf, reportMarkdown }: Written,
): ReportAnswer | Refused {
  const reference = of ?? referenceOf(snapshot, position && snapshot.positions.at(position)?.segment);
  const report = reportOf(snapshot, kind, reference);
  if ("failure" in report) return badRequest(report.failure);
  return {
    title: report.title,
    markdown: reportMarkdown(report),
    ...(reference === undefined ? {} : { of: reference }),
  };
}
