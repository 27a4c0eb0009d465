/** Division by braces and by the words that begin a part, for a file whose braces add up or nearly do. */
import { containers, structural } from "../../grammar/vocabulary.ts";
import type { Line } from "./read-lines.ts";
import { type Draft, finish, inlineStructureWords, mayHold, type Segment } from "./segment.ts";

export function divide(text: string, lines: readonly Line[]): Segment[] {
  const out: Draft[] = [];
  const stack: Draft[] = [];
  let leaf: Draft | undefined;
  let depth = 0;

  const add = (kind: Segment["kind"], line: Line): Draft => {
    const word = kind === "open" || kind === "block" ? line.word : "";
    const draft: Draft = { kind, word, start: line.start, end: line.end, indent: line.indent, lines: 1 };
    out.push(draft);
    return draft;
  };
  const extend = (draft: Draft, line: Line): void => {
    draft.end = line.end;
    draft.lines++;
  };
  const closeContainer = (line: Line): void => {
    const draft = add("close", line);
    if (!stack.pop()) draft.fault = "extra-close";
  };

  for (const line of lines) {
    if (leaf) {
      if (!structural.has(line.word)) {
        extend(leaf, line);
        depth += line.net;
        if (depth <= 0) leaf = undefined;
        continue;
      }
      leaf.fault = "unclosed";
      leaf = undefined;
    }
    if (line.closesFirst && line.net < 0) closeContainer(line);
    else if (containers.has(line.word) && line.net > 0) {
      while (stack.length > 0 && !mayHold(stack.at(-1)?.word ?? "", line.word)) drop(stack);
      stack.push(add("open", line));
    } else if (line.net > 0 || (structural.has(line.word) && !inlineStructureWords.has(line.word))) {
      if (line.word === "supply") while (stack.length > 0 && stack.at(-1)?.word !== "installation") drop(stack);
      const draft = add("block", line);
      depth = line.net;
      if (depth > 0) leaf = draft;
    } else {
      const last = out.at(-1);
      if (last?.kind === "lines") extend(last, line);
      else add("lines", line);
    }
  }
  if (leaf) leaf.fault = "unclosed";
  while (stack.length > 0) drop(stack);
  return out.map((draft) => finish(text, draft));
}

function drop(stack: Draft[]): void {
  const draft = stack.pop();
  if (draft) draft.fault = "unclosed";
}
