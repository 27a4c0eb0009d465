/** Findings by the files they stand in. */
import type { FileModel } from "../model/file.ts";
import type { Problem } from "../model/problems.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/segment.ts";
import { withShortWords } from "../text/words.ts";
import { byPlace } from "./finding-order.ts";
import { isNewer, versionFindings } from "./language-version.ts";
import type { LoadedFile } from "./loaded-file.ts";

export interface FileFindings {
  readonly file: LoadedFile;
  readonly findings: readonly Finding[];
}

/** Sorts findings to the files their segments belong to, each file's in the order of its text. */
export function assign(
  files: readonly LoadedFile[],
  findings: readonly Finding[],
  problemsOf: (model: FileModel) => FileModel["problems"] = ({ problems }) => problems,
): FileFindings[] {
  const bySegment = new Map<Segment, Finding[]>();
  for (const finding of findings) {
    const before = bySegment.get(finding.spot.segment);
    if (before) before.push(finding);
    else bySegment.set(finding.spot.segment, [finding]);
  }
  return files.map((file) => {
    const own: Finding[] = [];
    const problems: FileModel["problems"] = isNewer(file) ? new Map() : problemsOf(file.model);
    if (bySegment.size > 0 || problems.size > 0) {
      for (const segment of file.document.segments) {
        const ofLanguage = problems.get(segment);
        const found = bySegment.get(segment);
        // Most have neither.
        if (!ofLanguage && !found) continue;
        const here = [
          ...(ofLanguage ?? []).map((problem) => problemFinding(passedOver(problem, segment, file), segment)),
          ...(found ?? []),
        ];
        here.sort(byPlace);
        for (const finding of here) own.push(finding);
      }
    }
    own.unshift(...versionFindings(file));
    return { file, findings: own };
  });
}

/** A word of a later version that the file allows to be passed over. */
function passedOver(problem: Problem, { text }: Segment, { model }: LoadedFile): Problem {
  if (problem.check !== "unknown-word") return problem;
  const word = text.slice(problem.start, problem.end);
  const named = model.facts.all("may-ignore").some(({ args }) => args.words.some(({ value }) => value === word));
  if (!named) return problem;
  const message = `“${word}” is of a later version of the language and may be passed over: what it says is not judged here.`;
  return { ...problem, check: "passed-over", message, fixes: [] };
}

/** Faults of the language that cost nothing. */
const harmless: ReadonlySet<string> = new Set(["passed-over", "former-word"]);

function problemFinding({ check, message, start, end, fixes }: Problem, segment: Segment): Finding {
  const severity = harmless.has(check) ? "information" : "error";
  const shown = withShortWords(message);
  return { check: `language/${check}`, severity, message: shown, spot: { segment, start, end }, related: [], fixes };
}
