/** One JSON value a line: each file as soon as it is known, then the sums. */
import { type TerminalText, term } from "../../text/terminal.ts";
import { jsonPart } from "../say.ts";
import { fileJson, summaryJson } from "./json.ts";
import type { MakeReporter } from "./reporter.ts";

export const jsonlReporter: MakeReporter = (options) => ({
  file: (file) => line({ type: "file", ...fileJson(file, options) }),
  end: (totals) => line({ type: "summary", version: 1, ...summaryJson(totals) }),
});

export const line = (value: unknown): TerminalText => term`${jsonPart(value)}\n`;
