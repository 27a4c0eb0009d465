/** Conversations beside the lines: they are statements of the schedule, written by edits of it. */
import type { CancellationToken } from "vscode-languageserver";
import { answering, asking, conversations } from "../features/review.ts";
import { editOf, rangeOf } from "./convert.ts";
import {
  type ConversationAnswer,
  conversationsRequest,
  type SayAnswer,
  type SayQuestion,
  sayRequest,
} from "./review-protocol.ts";
import { badRequest, type Service } from "./service.ts";

interface About {
  readonly textDocument: { readonly uri: string };
}

export function reviews({ connection, ask, cursor }: Service): void {
  const all = ask<About, readonly ConversationAnswer[]>(conversationsRequest, [], (snapshot) => {
    const lineOf = ({ spot }: { readonly spot: Parameters<typeof rangeOf>[1] }) =>
      rangeOf(snapshot.positions, spot).start.line;
    return conversations(snapshot).map(({ question, answers }) => ({
      text: question.text,
      line: lineOf(question),
      answers: answers.map((one) => ({ text: one.text, line: lineOf(one) })),
    }));
  });
  connection.onRequest<readonly ConversationAnswer[], never>(
    conversationsRequest,
    async (question: { readonly uri?: unknown } | undefined, token: CancellationToken) => {
      const { uri } = question ?? {};
      if (typeof uri !== "string") return badRequest("Conversations need the address of their schedule.");
      return await all({ textDocument: { uri } }, token);
    },
  );
  const say = ask<About & SayQuestion, SayAnswer>(
    sayRequest,
    { problem: "The schedule is not read yet." },
    (snapshot, about) => {
      const at = cursor(snapshot, { line: about.line, character: 0 });
      const said = (about.answers ? answering : asking)(snapshot, at, about.text);
      if ("problem" in said) return said;
      const { range, newText } = editOf(snapshot.positions, said.segment, said.edit);
      return { edit: { range, newText }, ...(snapshot.version === undefined ? {} : { version: snapshot.version }) };
    },
  );
  connection.onRequest<SayAnswer, never>(
    sayRequest,
    async (question: Partial<SayQuestion> | undefined, token: CancellationToken) => {
      const { uri, line, text, answers } = question ?? {};
      if (typeof uri !== "string" || typeof line !== "number" || typeof text !== "string" || text.trim() === "")
        return badRequest("What is said needs its schedule, its line and its words.");
      return await say({ textDocument: { uri }, uri, line, text, answers: answers === true }, token);
    },
  );
}
