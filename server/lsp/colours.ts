/**
 * Semantic tokens: a number per line, column, length, kind. The numbers of a segment are made once; a file's are those of
 * its segments one after another, and an edit sends only what differs.
 */
import type {
  ClientCapabilities,
  SemanticTokens,
  SemanticTokensDelta,
  ServerCapabilities,
} from "vscode-languageserver";
import type { BlockKind } from "../../grammar/vocabulary.ts";
import { withEnclosingBlock } from "../features/cursor.ts";
import { tokenKinds, tokensIn } from "../features/tokens.ts";
import type { Segment } from "../syntax/split.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Service } from "./service.ts";

interface Numbers {
  readonly within: BlockKind;
  /** Five a token, the first counted from the segment's start. */
  readonly data: readonly number[];
  /** Line of the last token. */
  readonly lastLine: number;
}

const kept = new WeakMap<Segment, Numbers>();

/** Lines of a file that are coloured in one answer: some thousand ways, and a few megabytes. */
export const mostLines = 20_000;

export function colours({ connection, ask, workspace }: Service, client: ClientCapabilities): ServerCapabilities {
  if (!client.textDocument?.semanticTokens) return {};
  const sent = new Map<string, { readonly id: string; readonly data: readonly number[] }>();
  let ids = 0;
  const remember = (path: string, data: readonly number[]): string => {
    const id = String(++ids);
    for (const other of sent.keys()) if (!workspace.isOpen(other)) sent.delete(other);
    sent.set(path, { id, data });
    return id;
  };
  const none: SemanticTokens = { data: [] };
  const told = new Set<string>();
  /** A file beyond the ceiling is coloured whole up to it; what an editor shows of the rest it may ask for by range. */
  const whole = (snapshot: Snapshot): number[] => {
    const { path, document } = snapshot.file;
    if (!told.has(path) && document.segments.reduce((sum, { breaks }) => sum + breaks, 0) > mostLines) {
      told.add(path);
      connection.console.info(`${path} is coloured up to line ${mostLines}, and beyond where it is looked at.`);
    }
    return numbersOf(snapshot, 0, mostLines - 1);
  };
  connection.languages.semanticTokens.on(
    ask("textDocument/semanticTokens/full", none, (snapshot) => {
      const data = whole(snapshot);
      return { resultId: remember(snapshot.file.path, data), data };
    }),
  );
  connection.languages.semanticTokens.onDelta(
    ask("textDocument/semanticTokens/full/delta", none as SemanticTokens | SemanticTokensDelta, (snapshot, params) => {
      const { previousResultId } = params as typeof params & { readonly previousResultId: string };
      const { path } = snapshot.file;
      const before = sent.get(path);
      const data = whole(snapshot);
      const resultId = remember(path, data);
      return before?.id === previousResultId ? { resultId, edits: difference(before.data, data) } : { resultId, data };
    }),
  );
  connection.languages.semanticTokens.onRange(
    ask("textDocument/semanticTokens/range", none, (snapshot, { range }) => ({
      data: numbersOf(snapshot, range.start.line, Math.min(range.end.line, range.start.line + mostLines)),
    })),
  );
  return {
    semanticTokensProvider: {
      legend: { tokenTypes: [...tokenKinds], tokenModifiers: ["declaration"] },
      full: { delta: true },
      range: true,
    },
  };
}

/** The numbers of all segments that touch some lines. */
function numbersOf(snapshot: Snapshot, from: number, to: number): number[] {
  const out: number[] = [];
  let line = 0;
  let lastLine = 0;
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments)) {
    if (line > to) break;
    if (line + segment.breaks >= from) {
      const { data, lastLine: last } = numbersIn(segment, within);
      if (data.length > 0) {
        out.push(line - lastLine + (data[0] ?? 0));
        for (let at = 1; at < data.length; at++) out.push(data[at] ?? 0);
        lastLine = line + last;
      }
    }
    line += segment.breaks;
  }
  return out;
}

function numbersIn(segment: Segment, within: BlockKind): Numbers {
  const before = kept.get(segment);
  if (before?.within === within) return before;
  const starts = lineStarts(segment.text);
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const { start, length, kind, defines } of tokensIn(segment, within)) {
    const place = positionOf(starts, start);
    const down = place.line - line;
    data.push(
      down,
      down === 0 ? place.character - character : place.character,
      length,
      tokenKinds.indexOf(kind),
      defines ? 1 : 0,
    );
    line = place.line;
    character = place.character;
  }
  const numbers = { within, data, lastLine: line };
  kept.set(segment, numbers);
  return numbers;
}

/** One edit: what lies between the like beginning and the like end. */
function difference(
  before: readonly number[],
  after: readonly number[],
): { start: number; deleteCount: number; data?: number[] }[] {
  let head = 0;
  while (head < before.length && head < after.length && before[head] === after[head]) head++;
  let tail = 0;
  const most = Math.min(before.length, after.length) - head;
  while (tail < most && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  const deleteCount = before.length - head - tail;
  const data = after.slice(head, after.length - tail);
  return deleteCount === 0 && data.length === 0 ? [] : [{ start: head, deleteCount, data }];
}
