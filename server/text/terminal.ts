/** Text for a terminal. */
import { type Ready, writerOf } from "./ready.ts";
import { visible } from "./visible.ts";

export type TerminalText = Ready<"terminal">;

/** What is put in stays on its line, so that nothing can pass for a line of the report. */
export const term = writerOf("terminal", (text) => visible(text).replaceAll("\n", "␊"));

/** A text whose line ends are ours. */
export const lines = (text: string): TerminalText => term.join(text.split("\n"), "\n");
