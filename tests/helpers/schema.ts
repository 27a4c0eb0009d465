/** What a JSON value has against a JSON Schema, by the language service that editors use for JSON. */
import { getLanguageService, type JSONSchema, TextDocument } from "vscode-json-languageservice";

export type Schema = JSONSchema;

export async function faultsAgainst(schema: Schema, value: unknown): Promise<readonly string[]> {
  const service = getLanguageService({});
  const document = TextDocument.create("mem://value.json", "json", 1, JSON.stringify(value, null, 1));
  const json = service.parseJSONDocument(document);
  const found = await service.doValidation(document, json, { schemaRequest: "error" }, schema);
  return found.map(({ message, range }) => `line ${range.start.line}: ${message}`);
}
