/** The generated schedule as JSON records with a schema: what a general-purpose service can be given to check. */
import type { JSONSchema } from "vscode-json-languageservice";
import { readFile } from "../../server/model/file.ts";
import type { Facts } from "../../server/model/values.ts";
import { split } from "../../server/syntax/split.ts";

/** A statement's arguments as one text, which is the least a schema can be asked to look at. */
const argument: JSONSchema = { type: "string", minLength: 1, pattern: "^[^\\n]*$" };

const facts: JSONSchema = {
  type: "object",
  additionalProperties: { anyOf: [argument, { type: "array", items: argument }, { $ref: "#/definitions/facts" }] },
  properties: {
    device: { type: "string", pattern: "^(BS|EN|IEC) ", description: "The protective device." },
    length: { type: "string", pattern: "^\\d" },
    Ib: { type: "string", pattern: "^\\d+(\\.\\d+)? A$", description: "Design current." },
    Zs: { type: "string", pattern: "^[<>]?\\d+(\\.\\d+)? Ω$" },
  },
};

export const recordSchema: JSONSchema = {
  type: "object",
  required: ["boards"],
  definitions: { facts },
  properties: {
    boards: {
      type: "array",
      items: {
        type: "object",
        required: ["name", "ways"],
        properties: {
          name: { type: "string", pattern: "^[A-Z]" },
          ways: {
            type: "array",
            items: {
              type: "object",
              required: ["id", "facts"],
              properties: {
                id: { type: "string" },
                title: { type: "string" },
                facts: { $ref: "#/definitions/facts" },
              },
            },
          },
        },
      },
    },
  },
};

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
