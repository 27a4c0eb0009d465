/** The version of the language a file is in. */
import type { Fact } from "../model/values.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { valueSpot, wordSpot } from "../rules/frame/rule.ts";
import type { Document } from "../syntax/document.ts";
import { largeFinding } from "./large-text.ts";
import type { LoadedFile } from "./loaded-file.ts";

/** The version of the language this program speaks. Older ones are read for ever. */
export const languageVersion = 1;

/** Whether a file is in a version of the language that this program does not know. */
export const isNewer = ({ model }: Pick<LoadedFile, "model">): boolean =>
  (model.facts.one("wayfile")?.args.version.value ?? 0) > languageVersion;

export function versionFindings({ model, document, unreadSize }: LoadedFile): Finding[] {
  if (unreadSize !== undefined) return largeFinding(document, unreadSize);
  const [first] = document.segments;
  if (!first || document.segments.every((segment) => segment.text.trim() === "")) return [];
  const fact = model.facts.one("wayfile");
  if (!fact && model.facts.isUnread("wayfile")) return [];
  const segment = fact?.segment ?? first;
  const lineEnd = first.text.search(/\r|\n|$/);
  if (!fact) {
    const finding = languageFindingOf(
      "no-version",
      { segment, start: 0, end: lineEnd },
      `The version of the language is not stated: begin the file with “wayfile ${languageVersion}”.`,
    );
    return [
      {
        ...finding,
        severity: "warning",
        fixes: [
          {
            title: `Add “wayfile ${languageVersion}”`,
            edits: [{ start: 0, end: 0, text: `wayfile ${languageVersion}\n` }],
            safe: true,
          },
        ],
      },
    ];
  }
  if (!isFirst(fact, document)) {
    const message = "“wayfile” is the first statement of a file: move this line to the top.";
    return [{ ...languageFindingOf("no-version", wordSpot(fact), message), severity: "warning" }];
  }
  if (fact.args.version.value < 1) {
    const message = `There is no version ${fact.args.version.value} of the language: the first is 1.`;
    return [languageFindingOf("newer-version", valueSpot(fact, fact.args.version), message)];
  }
  if (!isNewer({ model })) return [];
  return [
    languageFindingOf(
      "newer-version",
      valueSpot(fact, fact.args.version),
      `This file is in version ${fact.args.version.value} of the language; this program knows up to ${languageVersion}. Nothing is judged: get a newer program.`,
    ),
  ];
}

/** Nothing but blank lines and comments stands above it. */
function isFirst({ segment, start }: Fact, { segments }: Document): boolean {
  const above = segments.slice(0, segments.indexOf(segment)).map(({ text }) => text);
  return [...above, segment.text.slice(0, start)].every((text) => /^\ufeff?(?:\s|#[^\r\n]*)*$/.test(text));
}

const languageFindingOf = (check: string, spot: Finding["spot"], message: string): Finding => ({
  check: `language/${check}`,
  severity: "error",
  message,
  spot,
  related: [],
  fixes: [],
});
