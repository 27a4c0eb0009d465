/** The generated schedule as JSON records: what a general-purpose service can be given to check. */
import { readFile } from "../../server/model/file.ts";
import type { Facts } from "../../server/model/values.ts";
import { split } from "../../server/syntax/split.ts";

export function recordsOf(schedule: string): string {
  const model = readFile(split(schedule));
  const boards = model.installations.flatMap(({ boards }) => boards);
  const records = boards.map(({ head, ways }) => ({
    name: head.name,
    ways: ways.map((way) => ({ id: way.id, title: way.title, facts: recordOf(way.facts) })),
  }));
  return JSON.stringify({ boards: records }, null, 1);
}

function recordOf({ list }: Facts): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  for (const { word, wordEnd, end, segment, inner } of list) {
    const value = inner ? recordOf(inner) : segment.text.slice(wordEnd, end).trim().replace(/\s+/g, " ") || "yes";
    const before = record[word];
    record[word] = before === undefined ? value : Array.isArray(before) ? [...before, value] : [before, value];
  }
  return record;
}
