/** Every format of a report, by its name on the command line. Each is loaded when it is asked for. */
import type { MakeReporter } from "./reporter.ts";
import { textReporter } from "./text.ts";

const reporters = {
  text: async () => textReporter,
  concise: async () => (await import("./concise.ts")).conciseReporter,
  json: async () => (await import("./json.ts")).jsonReporter,
  jsonl: async () => (await import("./jsonl.ts")).jsonlReporter,
  sarif: async () => (await import("./sarif.ts")).sarifReporter,
  junit: async () => (await import("./junit.ts")).junitReporter,
  github: async () => (await import("./github.ts")).githubReporter,
  gitlab: async () => (await import("./gitlab.ts")).gitlabReporter,
  markdown: async () => (await import("./markdown.ts")).markdownReporter,
} as const satisfies Readonly<Record<string, () => Promise<MakeReporter>>>;

export type Format = keyof typeof reporters;

export const formatNames: readonly string[] = Object.keys(reporters);

export const reporterNamed = (format: Format): Promise<MakeReporter> => reporters[format]();

/** Those a person reads, where notes belong to the report itself. */
export const forPeople: ReadonlySet<string> = new Set(["text", "concise"]);
