/** The live view takes from its page what the page says, and nothing else. */
import { describe, expect, it } from "vitest";
import { heard } from "../../client/heard.ts";

const entry = { kind: "enter", board: "A", row: "3", column: "Zs", text: "0.4", day: "2026-04-01" } as const;

describe("a message of the page", () => {
  it.each([
    { kind: "show", view: "board" },
    { kind: "show", view: "tests", board: "A" },
    { kind: "undo" },
    { kind: "reveal", at: { line: 3, character: 0, last: 9 } },
    { kind: "reveal", at: { line: 3, character: 0, last: 9, uri: "file:///a/b.ways" } },
    entry,
    { ...entry, instrument: "M1", point: "S1", why: "misread", draft: "0.3" },
  ])("is heard: %j", (message) => {
    expect(heard(message)).toEqual(message);
  });

  it.each([
    ...[undefined, null, 7, "undo", [], {}, { kind: "Undo" }, { kind: "x" }, { kind: ["undo"] }],
    { kind: "show" },
    { kind: "show", view: 1 },
    { kind: "show", view: "cellar" },
    { kind: "show", view: "board", board: {} },
    { kind: "reveal" },
    { kind: "reveal", at: { line: -1, character: 0 } },
    { kind: "reveal", at: { line: 0, character: Number.NaN } },
    { kind: "reveal", at: { line: 0.5, character: Number.POSITIVE_INFINITY } },
    { kind: "reveal", at: { line: 0, character: 0, uri: "file:///etc/passwd" } },
    { kind: "reveal", at: { line: 0, character: 0, uri: 1 } },
    { ...entry, text: undefined },
    { ...entry, text: "x".repeat(100_000) },
    { ...entry, why: 1 },
  ])("is passed over: %j", (message) => {
    expect(heard(message)).toBeUndefined();
  });

  it("names no document to write into", () => {
    expect(heard({ ...entry, uri: "file:///other.ways" })).toEqual(entry);
  });
});
