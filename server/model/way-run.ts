/** Several ways in one name, as only spare ways may be written: `10..12`, `8L2..9L1`. */
import { wordAt, writtenAt } from "./fact-values.ts";
import type { Problem } from "./problems.ts";
import type { Fact } from "./values.ts";

const shape = /^(\d+)(\/?L([123]))?\.\.(\d+)(\/?L([123]))?$/;

/** Longer than any board, and short enough to be written out. */
const longest = 200;

/** The names of a run, in the order of the board; nothing where it is none. */
export function wayRun(name: string): string[] | undefined {
  const [, first, , firstLine, last, sign = "", lastLine] = shape.exec(name) ?? [];
  if (first === undefined || last === undefined || (firstLine === undefined) !== (lastLine === undefined))
    return undefined;
  const names: string[] = [];
  const lines = firstLine === undefined ? 1 : 3;
  const from = Number(first) * lines + Number(firstLine ?? 1) - 1;
  const to = Number(last) * lines + Number(lastLine ?? 1) - 1;
  if (to <= from || to - from >= longest) return undefined;
  for (let at = from; at <= to; at++)
    names.push(lines === 1 ? `${at}` : `${Math.floor(at / 3)}${sign.slice(0, -2)}L${(at % 3) + 1}`);
  return names;
}

/** A run of anything but spare ways, or one that does not run from a lower number to a higher. */
export function runOfCircuits(header: Pick<Fact, "args">): Problem[] {
  const id = writtenAt(header, "id");
  if (!id?.value.includes("..")) return [];
  const spare = wordAt(header, "kind") === "spare";
  if (spare && wayRun(id.value)) return [];
  const message = spare
    ? `“${id.value}” is no run of ways: write the lower number first, as 10..12 or 8L2..9L1.`
    : `“${id.value}” is a run of ways, and only spare ways may be written as one: each circuit has its own line.`;
  return [{ check: "wrong-argument", message, start: id.start, end: id.end, fixes: [] }];
}
