/** Which strings of a manifest are shown to a person, and so can be translated. */

const shown = new Set(["title", "description", "markdownDescription", "name", "label", "altText"]);

/**
 * A manifest whose shown strings stand as `%key%`, and the English of each key.
 * A key is the path of the string, such as `commands.wayfile.size.title`.
 */
export function translatable(manifest: Record<string, unknown>): {
  keyed: Record<string, unknown>;
  english: Record<string, string>;
} {
  const english: Record<string, string> = {};
  const keep = (text: string, path: readonly string[]): string => {
    const key = path.join(".");
    english[key] = text;
    return `%${key}%`;
  };
  const walk = (value: unknown, path: readonly string[]): unknown => {
    if (typeof value === "string") return shown.has(path.at(-1) ?? "") ? keep(value, path) : value;
    if (Array.isArray(value)) {
      const words = path.at(-1) === "enumDescriptions";
      return value.map((each, at) =>
        words ? keep(each, [...path, `${at}`]) : walk(each, [...path, nameOf(each, at)]),
      );
    }
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, walk(each, [...path, key])]));
  };
  return { keyed: { ...manifest, contributes: walk(manifest.contributes, []) }, english };
}

/** By what an entry of a list is known where the list grows: its own name, else its place. */
function nameOf(entry: unknown, at: number): string {
  const { command, id } = (typeof entry === "object" && entry !== null ? entry : {}) as Record<string, unknown>;
  return String(command ?? id ?? at);
}
