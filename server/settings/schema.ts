/** The JSON schema of the settings: editors complete and mark by it. */
import { pages } from "../rules/frame/catalogue.ts";
import { type Keys, type Kind, keys } from "./keys.ts";
import { familyOf, isAlwaysShown } from "./settings.ts";

export function settingsSchema(): object {
  return {
    $schema: "http://json-schema.org/draft-07/schema#",
    title: "Settings of Wayfile for a repository",
    ...objectSchema(keys),
  };
}

function schemaOf(kind: Kind): object {
  switch (kind.is) {
    case "text":
      return { type: "string", pattern: "\\S" };
    case "day":
      return { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" };
    case "count":
      return { type: "integer", minimum: 0 };
    case "level":
      return { enum: kind.levels };
    case "check":
      return { enum: names(kind.skippable) };
    case "list":
      return { type: "array", items: schemaOf(kind.of) };
    case "object":
      return objectSchema(kind.keys);
    case "byCheck":
      return { type: "object", propertyNames: { enum: names(false) }, additionalProperties: schemaOf(kind.of) };
  }
}

function objectSchema(known: Keys): object {
  const required = Object.entries(known).flatMap(([key, row]) => (row.required ? [key] : []));
  return {
    type: "object",
    properties: Object.fromEntries(
      Object.entries(known).map(([key, { kind, means }]) => [key, { ...schemaOf(kind), description: means }]),
    ),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  };
}

/** Families, then checks. */
function names(skippable: boolean): readonly string[] {
  const ids = pages.map(({ id }) => id).filter((id) => !(skippable && isAlwaysShown(id)));
  return [...new Set(ids.map(familyOf)), ...ids];
}
