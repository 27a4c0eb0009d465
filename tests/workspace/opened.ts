/** A workspace of one open schedule, and an edit of it that every way is judged by. */
import type { Edit } from "../../server/syntax/document.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";

export const name = "file:///a.ways";

export const opened = (text: string): Workspace => {
  const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
  workspace.open(name, 1, text);
  return workspace;
};

/** Some loops are far too high, by a figure that stands in no table. */
export const faulty = (seed: number): string =>
  generate({ ways: 30, seed }).replaceAll(/(?<=\bZs +)0(?=\.\d+ Ω)/g, "91");

export const found = (workspace: Workspace): string[] =>
  workspace.snapshot(name)?.findings.map(({ check, message }) => `${check} ${message}`) ?? [];

export function changedZe(text: string): Edit {
  const lines = text.split("\n");
  const line = lines.findIndex((one) => /^ +Ze /.test(one));
  const character = (lines[line] ?? "").search(/\d(?=\D*$)/);
  return { range: { start: { line, character }, end: { line, character: character + 1 } }, text: "9" };
}
