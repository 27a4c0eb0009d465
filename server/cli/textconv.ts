/** `wayfile git textconv`: a schedule as the facts it holds, each under its address, for `git diff`. */
import { resolve } from "node:path";
import { readBeside } from "../disk/read-now.ts";
import { entriesOfFile } from "../readings/entries.ts";
import { fileOfText } from "../workspace/loaded-file.ts";
import { exit } from "./exit.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export function textconv(path: string, terminal: Terminal): number {
  const read = readBeside(resolve(terminal.cwd, path));
  if ("failure" in read) return refuse(`“${path}” cannot be read: ${read.failure}`, terminal);
  const { model, document } = fileOfText(path, read.text);
  const facts = entriesOfFile(model).map(({ at, shown }) => (shown === "" ? at : `${at}: ${shown}`));
  // What cannot be read is no fact, and must not vanish from a diff for that.
  const unread = document.segments.flatMap(({ text }, index) => {
    const segment = document.segments[index];
    const problems = segment ? (model.problems.get(segment) ?? []) : [];
    return problems.map(({ start }) => `not understood: ${lineAt(text, start)}`);
  });
  terminal.data([...facts, ...new Set(unread)].map((line) => `${line}\n`).join(""));
  return exit.clean;
}

const lineAt = (text: string, offset: number): string => {
  const from = Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
  return /^[^\r\n]*/.exec(text.slice(from))?.[0].trim() ?? "";
};
