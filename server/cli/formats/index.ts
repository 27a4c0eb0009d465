/** Every format of a report, by its name on the command line. */
import { conciseReporter } from "./concise.ts";
import { githubReporter } from "./github.ts";
import { gitlabReporter } from "./gitlab.ts";
import { jsonReporter } from "./json.ts";
import { jsonlReporter } from "./jsonl.ts";
import { junitReporter } from "./junit.ts";
import { markdownReporter } from "./markdown.ts";
import type { MakeReporter } from "./reporter.ts";
import { sarifReporter } from "./sarif.ts";
import { textReporter } from "./text.ts";

export const reporters = {
  text: textReporter,
  concise: conciseReporter,
  json: jsonReporter,
  jsonl: jsonlReporter,
  sarif: sarifReporter,
  junit: junitReporter,
  github: githubReporter,
  gitlab: gitlabReporter,
  markdown: markdownReporter,
} as const satisfies Readonly<Record<string, MakeReporter>>;

export type Format = keyof typeof reporters;

/** Those a person reads, where notes belong to the report itself. */
export const forPeople: ReadonlySet<string> = new Set(["text", "concise"]);
