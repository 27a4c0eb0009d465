/** The generated schedule as JSON records with a schema: what a general-purpose service can be given to check. */
import type { JSONSchema } from "vscode-json-languageservice";
import { readFile } from "../../server/model/file.ts";
import type { AnyValue, Fact } from "../../server/model/values.ts";
import { split } from "../../server/syntax/split.ts";

const quantity: JSONSchema = {
  type: "object",
  required: ["value", "unit"],
  additionalProperties: false,
  properties: {
    value: { type: "number", minimum: 0 },
    unit: { enum: ["Ω", "MΩ", "mm²", "mm", "m", "A", "kA", "mA", "V", "ms", "s", "°C", "kW", "W"] },
    sign: { enum: ["=", "<", ">"] },
  },
};

const fact: JSONSchema = {
  type: "object",
  required: ["word"],
  properties: {
    word: { type: "string", minLength: 1, description: "The word of the statement." },
    args: {
      type: "array",
      items: { anyOf: [quantity, { type: "string" }, { type: "array", items: { type: "string" } }] },
    },
    inner: { type: "array", items: { $ref: "#/definitions/fact" } },
  },
};

export const recordSchema: JSONSchema = {
  type: "object",
  required: ["boards"],
  definitions: { fact },
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
                facts: { type: "array", items: { $ref: "#/definitions/fact" } },
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
    ways: ways.map((way) => ({ id: way.id, title: way.title, facts: way.facts.list.map(record) })),
  }));
  return JSON.stringify({ boards: records }, null, 1);
}

function record({ word, args, inner }: Fact): unknown {
  const values = Object.values(args).flatMap((value) => (value === undefined ? [] : ([value].flat() as AnyValue[])));
  return { word, args: values.map(plain), ...(inner ? { inner: inner.list.map(record) } : {}) };
}

function plain(value: AnyValue): unknown {
  if ("unit" in value) return { value: Math.abs(value.value), unit: value.unit, sign: value.sign };
  if ("value" in value) return String(value.value);
  if ("curve" in value) return `${value.curve}${value.rating}`;
  if ("legs" in value)
    return [value.from.value, ...value.legs.flatMap((leg) => [`${leg.length.value} m`, leg.to.value])];
  return value.absent;
}
