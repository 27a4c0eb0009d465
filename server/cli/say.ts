/** What commands print besides their reports. */
import { type TerminalText, term } from "../text/terminal.ts";
import { steering } from "../text/visible.ts";
import { exit } from "./exit.ts";
import type { Terminal } from "./terminal.ts";

/** A line each. */
export const sentences = (list: readonly string[]): TerminalText => term.join(list.map((one) => term`${one}\n`));

/** Says in one sentence why a command did nothing. */
export function refuse(sentence: string, terminal: Terminal): number {
  terminal.err(sentences([sentence]));
  return exit.failed;
}

/** What would steer a terminal is written as JSON writes it, so that a program reads the same text. */
export const jsonText = (value: unknown): TerminalText => term`${jsonPart(value, 0)}\n`;

/** The same as a part of a larger value, whose lines are indented by so much; in one line without an indent. */
export function jsonPart(value: unknown, indent?: number): TerminalText {
  const text = JSON.stringify(value, null, indent === undefined ? undefined : 2).replace(
    steering,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  return term.asItStands(indent ? text.replaceAll("\n", `\n${" ".repeat(indent)}`) : text);
}
