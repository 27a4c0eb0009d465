/** The shapes of what this program reads and writes, as JSON Schema. */
import { settingsSchema } from "../settings/schema.ts";
import { compareSchema } from "./compare-json.ts";
import type { schemaNames } from "./format-names.ts";
import { checkLineSchema, checkSchema } from "./formats/json-schema.ts";
import { historySchema } from "./history-json.ts";
import { registerSchema } from "./register-json.ts";
import { sizeSchema } from "./size-json.ts";

export type SchemaName = (typeof schemaNames)[number];

export const schemas = {
  settings: settingsSchema,
  check: () => checkSchema,
  "check-lines": () => checkLineSchema,
  compare: () => compareSchema,
  history: () => historySchema,
  register: () => registerSchema,
  size: () => sizeSchema,
} as const satisfies Readonly<Record<SchemaName, () => object>>;
