/** What a person calls a reading, and what makes it another one: asked of the vocabulary's row. */
import type { WordRow } from "../../grammar/params.ts";
import { readArgs } from "../../grammar/readings.ts";
import type { AnyValue, Fact } from "../model/values.ts";

/** “L-N at S3”, “bonding of water”, “Zs L1”. */
export function readingName(row: WordRow, { args }: Fact, arg: string): string {
  const label = row.params[arg]?.label;
  const template = row.reads?.name ?? "";
  const name = template
    // What stands in square brackets goes with its argument.
    .replace(/\[([^\]]*)\]/g, (_, inner: string) =>
      namesIn(inner).every((one) => args[one] !== undefined) ? inner : "",
    )
    .replace(/\{([\w-]+)\}/g, (_, one: string) => (one === "arg" ? (label ?? arg) : textOf(args[one])));
  const isOneOfSeveral = label !== undefined && !template.includes("{arg}") && readArgs(row).length > 1;
  return isOneOfSeveral ? `${name} ${label}` : name;
}

const namesIn = (text: string): string[] => [...text.matchAll(/\{([\w-]+)\}/g)].map(([, name = ""]) => name);

/** The arguments that say what was tested, not how: the point, the RCD, the service. */
export const thingsOf = ({ reads }: WordRow): readonly string[] =>
  (reads?.key ?? []).filter((name) => !reads?.how?.includes(name));

/** What tells a line of tests from others of its word. */
export const keyText = (names: readonly string[], { args }: Fact): string =>
  names.map((name) => textOf(args[name])).join(" ");

function textOf(value: Fact["args"][string]): string {
  return [value ?? []]
    .flat()
    .map((one: AnyValue) => ("value" in one ? String(one.value) : ""))
    .join(", ");
}
