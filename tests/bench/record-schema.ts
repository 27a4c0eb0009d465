/** The schema of the records, by itself: the program that checks them loads nothing of ours. */
import type { JSONSchema } from "vscode-json-languageservice";

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
