/** Findings with what would put them right, applied as an editor would apply it. */

import type { Finding } from "../../server/rules/frame/rule.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };

/** Every finding of one check in a text. */
export function foundBy(check: string, text: string): readonly Finding[] {
  return checked(text).findings.filter((finding) => finding.check === check);
}

/** Every finding in a text. */
export const allIn = (text: string): readonly Finding[] => checked(text).findings;

function checked(text: string) {
  const file = fileOfText("sample.ways", text);
  const own = checkProject(file, alone).files.find((entry) => entry.file === file);
  // What a verdict speaks for is listed behind it.
  return { file, findings: (own?.findings ?? []).flatMap((finding) => [finding, ...(finding.explains ?? [])]) };
}

/** The text after the first fix of a check's first finding. Throws where there is none. */
export function fixed(check: string, text: string, which = 0): string {
  const { file, findings } = checked(text);
  const finding = findings.find((one) => one.check === check);
  const fix = finding?.fixes[which];
  if (!finding || !fix) throw new Error(`${check} offers no fix ${which} here.`);
  const edits = fix.edits.toSorted((a, b) => b.start - a.start);
  return file.document.segments
    .map((segment) =>
      segment === finding.spot.segment
        ? edits.reduce((own, edit) => own.slice(0, edit.start) + edit.text + own.slice(edit.end), segment.text)
        : segment.text,
    )
    .join("");
}
