/** A member of what came over the wire, of which nothing is known. */
export const at = (value: unknown, key: string): unknown =>
  typeof value === "object" && value !== null ? (value as Record<string, unknown>)[key] : undefined;
