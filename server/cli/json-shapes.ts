/** Parts that the JSON schemas of reports are put together from. */
export const dialect = "https://json-schema.org/draft/2020-12/schema";
export const text = { type: "string" } as const;
export const number = { type: "number" } as const;
export const truth = { type: "boolean" } as const;
export const count = { type: "integer", minimum: 0 } as const;
export const orNull = <T>(schema: T) => ({ anyOf: [schema, { type: "null" }] }) as const;
export const list = <T>(items: T) => ({ type: "array", items }) as const;
export const one = (...values: readonly string[]) => ({ enum: values }) as const;
/** Every key is there, and no other. */
export const exactly = <T extends object>(properties: T) =>
  ({ type: "object", properties, required: Object.keys(properties), additionalProperties: false }) as const;
/** A figure in a base unit: Ω, A, V, s. */
export const amount = { amount: number, unit: text } as const;
