import { installationsOf } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Finding, Rule, Setting } from "../../server/rules/frame/rule.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { inSetting } from "./sample.ts";

const byId: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.id, rule]));

/** What one check finds in a way's lines or a whole file. A sample that is not sound language is a slip of the test. */
export function find(id: string, lines: string, setting: Setting = {}): readonly Finding[] {
  const rule = byId.get(id);
  if (!rule) throw new Error(`There is no check ${id}.`);
  const file = fileOfText("sample.ways", inSetting(lines, setting).text);
  const problems = [...file.model.problems.values()].flat();
  if (problems.length > 0) throw new Error(problems.map(({ message }) => message).join(" "));
  return installationsOf([file]).flatMap((installation) => checkInstallation(installation, [rule]).findings);
}

/** The text of a finding's segment once a fix is made. */
export function fixed({ spot, fixes }: Finding, which = 0): string {
  const edits = [...(fixes[which]?.edits ?? [])].sort((a, b) => b.start - a.start);
  return edits.reduce(
    (text, { start, end, text: fresh }) => text.slice(0, start) + fresh + text.slice(end),
    spot.segment.text,
  );
}

/** The words a finding marks. */
export const marked = ({ spot }: Finding): string => spot.segment.text.slice(spot.start, spot.end);
