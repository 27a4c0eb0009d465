/** Questions and answers beside the lines, as the editor's own threads. They are text: what is written in one is a line. */
import {
  type CommentController,
  CommentMode,
  type CommentReply,
  type CommentThread,
  CommentThreadCollapsibleState,
  CommentThreadState,
  commands,
  comments,
  type Disposable,
  Position,
  Range,
  type TextDocument,
  WorkspaceEdit,
  window,
  workspace,
} from "vscode";
import {
  type ConversationAnswer,
  conversationsRequest,
  type SayAnswer,
  type SayQuestion,
  sayRequest,
} from "../server/lsp/review-protocol.ts";

interface Asked {
  request<Result>(method: string, parameters?: unknown): Promise<Result>;
}

/** Milliseconds after the last key before threads are put where their lines are now. */
const calm = 400;

export function showReview(server: Asked): Disposable[] {
  const controller = newController();
  const threads = new Threads(server, controller);
  const isOurs = ({ languageId }: TextDocument): boolean => languageId === "wayfile";
  const follow = (document: TextDocument): void => {
    if (isOurs(document)) threads.showLater(document, calm);
  };
  for (const document of workspace.textDocuments) follow(document);
  return [
    controller,
    threads,
    commands.registerCommand("wayfile.say", (reply: CommentReply) => say(server, threads, reply)),
    workspace.onDidOpenTextDocument(follow),
    workspace.onDidChangeTextDocument(({ document }) => follow(document)),
    workspace.onDidCloseTextDocument(({ uri }) => threads.clear(uri.toString())),
  ];
}

function newController(): CommentController {
  const controller = comments.createCommentController("wayfile.review", "Wayfile questions");
  controller.options = {
    prompt: "Ask or answer",
    placeHolder: "It is written into the schedule as a query or an answer.",
  };
  controller.commentingRangeProvider = {
    provideCommentingRanges: (document) =>
      document.languageId === "wayfile" ? [new Range(0, 0, Math.max(0, document.lineCount - 1), 0)] : [],
  };
  return controller;
}

/** The threads that are shown beside each open document. */
class Threads implements Disposable {
  readonly #server: Asked;
  readonly #controller: CommentController;
  readonly #shown = new Map<string, CommentThread[]>();
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();

  constructor(server: Asked, controller: CommentController) {
    this.#server = server;
    this.#controller = controller;
  }

  showLater(document: TextDocument, milliseconds: number): void {
    const key = document.uri.toString();
    clearTimeout(this.#timers.get(key));
    this.#timers.set(
      key,
      setTimeout(() => void this.#show(document), milliseconds),
    );
  }

  clear(key: string): void {
    for (const thread of this.#shown.get(key) ?? []) thread.dispose();
    this.#shown.delete(key);
  }

  dispose(): void {
    for (const timer of this.#timers.values()) clearTimeout(timer);
  }

  async #show(document: TextDocument): Promise<void> {
    const key = document.uri.toString();
    const { version } = document;
    const found = await this.#server
      .request<readonly ConversationAnswer[]>(conversationsRequest, { uri: key })
      .catch(() => undefined);
    if (!found || document.isClosed || document.version !== version) return;
    const before = this.#shown.get(key) ?? [];
    // A thread that says the same stays, so that what is open stays open.
    const threads = found.map((one) => {
      const same = before.find((thread) => sameWords(thread, one));
      if (same) before.splice(before.indexOf(same), 1);
      return placed(this.#controller, same, document, one);
    });
    for (const thread of before) thread.dispose();
    this.#shown.set(key, threads);
  }
}

/** Writes what somebody wrote in a thread into the schedule. */
async function say(server: Asked, threads: Threads, { thread, text }: CommentReply): Promise<void> {
  const document = await workspace.openTextDocument(thread.uri);
  const line = thread.range?.start.line ?? 0;
  const isNew = thread.comments.length === 0;
  const problem = await written(server, document, { uri: thread.uri.toString(), line, text, answers: !isNew });
  if (problem !== undefined) {
    await window.showWarningMessage(`Wayfile: ${problem}`);
    return;
  }
  // What it became is a thread of its own, made of the text.
  if (isNew) thread.dispose();
  threads.showLater(document, 0);
}

const remarksOf = ({ text, answers }: ConversationAnswer) => [
  { author: "query", text },
  ...answers.map((one) => ({ author: "answer", text: one.text })),
];

const sameWords = ({ comments: own }: CommentThread, one: ConversationAnswer): boolean => own[0]?.body === one.text;

function placed(
  controller: CommentController,
  before: CommentThread | undefined,
  document: TextDocument,
  one: ConversationAnswer,
): CommentThread {
  const range = new Range(one.line, 0, one.line, 0);
  const thread = before ?? controller.createCommentThread(document.uri, range, []);
  thread.range = range;
  thread.comments = remarksOf(one).map(({ author, text }) => ({
    author: { name: author },
    // Plain words: what a schedule says is no Markdown of ours.
    body: text,
    mode: CommentMode.Preview,
  }));
  const isOpen = one.answers.length === 0;
  thread.state = isOpen ? CommentThreadState.Unresolved : CommentThreadState.Resolved;
  thread.label = isOpen ? "Open question" : "Answered";
  if (!before) thread.collapsibleState = CommentThreadCollapsibleState.Collapsed;
  return thread;
}

/** Why it could not be written, or nothing once it is. */
async function written(server: Asked, document: TextDocument, question: SayQuestion): Promise<string | undefined> {
  for (let attempt = 0; attempt < 5; attempt++) {
    const { edit, version, problem } = await server.request<SayAnswer>(sayRequest, question);
    if (!edit) return problem ?? "It could not be written.";
    if (version !== undefined && document.version !== version) continue;
    const { start, end } = edit.range;
    const change = new WorkspaceEdit();
    const range = new Range(new Position(start.line, start.character), new Position(end.line, end.character));
    change.replace(document.uri, range, edit.newText);
    if (await workspace.applyEdit(change)) return undefined;
  }
  return "The schedule is being changed elsewhere: say it again.";
}
