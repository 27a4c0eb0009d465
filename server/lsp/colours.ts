/**
 * Semantic tokens: a number per line, column, length, kind. Those of a segment are found once; the protocol's own builder
 * counts them through a file, and after an edit sends only what differs.
 */

import {
  type ClientCapabilities,
  type SemanticTokens,
  SemanticTokensBuilder,
  type ServerCapabilities,
} from "vscode-languageserver";
import type { BlockKind } from "../../grammar/vocabulary.ts";
import { withEnclosingBlock } from "../features/cursor.ts";
import { tokenKinds, tokensIn } from "../features/tokens.ts";
import { Memo } from "../memo/memo.ts";
import type { Segment } from "../syntax/split.ts";
import { lineStarts, positionOf } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Service } from "./service.ts";

interface Token {
  /** Counted from the segment's first line. */
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly kind: number;
  readonly modifiers: number;
}

interface Tokens {
  readonly within: BlockKind;
  readonly tokens: readonly Token[];
}

const kept = new Memo<Segment, Tokens>();

/** Lines of a file that are coloured in one answer: some thousand ways, and a few megabytes. */
export const mostLines = 20_000;

export function colours({ connection, ask, workspace }: Service, client: ClientCapabilities): ServerCapabilities {
  if (!client.textDocument?.semanticTokens) return {};
  const builders = new Map<string, SemanticTokensBuilder>();
  const builderOf = (path: string): SemanticTokensBuilder => {
    for (const other of builders.keys()) if (!workspace.isOpen(other)) builders.delete(other);
    const builder = builders.get(path) ?? new SemanticTokensBuilder();
    builders.set(path, builder);
    return builder;
  };
  const none: SemanticTokens = { data: [] };
  const told = new Set<string>();
  /** A file beyond the ceiling is coloured whole up to it; what an editor shows of the rest it may ask for by range. */
  const whole = (builder: SemanticTokensBuilder, snapshot: Snapshot): void => {
    const { path, document } = snapshot.file;
    if (!told.has(path) && document.segments.reduce((sum, { breaks }) => sum + breaks, 0) > mostLines) {
      told.add(path);
      connection.console.info(`${path} is coloured up to line ${mostLines}, and beyond where it is looked at.`);
    }
    pushTokens(builder, snapshot, 0, mostLines - 1);
  };
  connection.languages.semanticTokens.on(
    ask("textDocument/semanticTokens/full", none, (snapshot) => {
      const builder = builderOf(snapshot.file.path);
      // What was sent before is of no more use, whatever its name.
      builder.previousResult("");
      whole(builder, snapshot);
      return builder.build();
    }),
  );
  connection.languages.semanticTokens.onDelta(
    ask("textDocument/semanticTokens/full/delta", none, (snapshot, params) => {
      const { previousResultId } = params;
      const builder = builderOf(snapshot.file.path);
      builder.previousResult(previousResultId);
      whole(builder, snapshot);
      return builder.buildEdits();
    }),
  );
  connection.languages.semanticTokens.onRange(
    ask("textDocument/semanticTokens/range", none, (snapshot, { range }) => {
      const builder = new SemanticTokensBuilder();
      pushTokens(builder, snapshot, range.start.line, Math.min(range.end.line, range.start.line + mostLines));
      return { data: builder.build().data };
    }),
  );
  return {
    semanticTokensProvider: {
      legend: { tokenTypes: [...tokenKinds], tokenModifiers: ["declaration"] },
      full: { delta: true },
      range: true,
    },
  };
}

/** The tokens of all segments that touch some lines. */
function pushTokens(builder: SemanticTokensBuilder, snapshot: Snapshot, from: number, to: number): void {
  let first = 0;
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments)) {
    if (first > to) break;
    if (first + segment.breaks >= from) {
      for (const { line, character, length, kind, modifiers } of tokensOf(segment, within)) {
        builder.push(first + line, character, length, kind, modifiers);
      }
    }
    first += segment.breaks;
  }
}

function tokensOf(segment: Segment, within: BlockKind): readonly Token[] {
  const before = kept.get(segment);
  if (before?.within === within) return before.tokens;
  const starts = lineStarts(segment.text);
  const tokens = tokensIn(segment, within).map(
    ({ start, length, kind, defines }): Token => ({
      ...positionOf(starts, start),
      length,
      kind: tokenKinds.indexOf(kind),
      modifiers: defines ? 1 : 0,
    }),
  );
  kept.set(segment, { within, tokens });
  return tokens;
}
