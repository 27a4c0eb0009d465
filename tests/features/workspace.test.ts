import { describe, expect, it } from "vitest";
import { documentOf, Positions, textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import { canonical, resolveUri } from "../../server/workspace/uri.ts";
import { useSummary } from "../../server/workspace/uses.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { loft } from "../helpers/cursor.ts";
import { generate, random } from "../helpers/generate.ts";

describe("addresses", () => {
  it.each([
    ["file:///c:/Work/a.ways", "file:///c%3A/Work/a.ways"],
    ["file:///C:/Work/a.ways", "file:///c%3A/Work/a.ways"],
    ["file:///home/a%20b/%c3%a9.ways", "file:///home/a%20b/%C3%A9.ways"],
    ["untitled:Untitled-1", "untitled:Untitled-1"],
    ["no address", "no address"],
    ["file://Server/share/a.ways", "file://server/share/a.ways"],
    ["file:///a/100%.ways", "file:///a/100%25.ways"],
    ["git:/a.ways?ref=b", "git:/a.ways?ref%3Db"],
  ])("%s is %s", (given, expected) => {
    expect(canonical(given)).toBe(expected);
    expect(canonical(expected)).toBe(expected);
  });

  it.each([
    ["meters.ways", "file:///a/b/meters.ways"],
    ["./meters.ways", "file:///a/b/meters.ways"],
    ["../c/d e.ways", "file:///a/c/d%20e.ways"],
    ["..\\c\\d.ways", "file:///a/c/d.ways"],
    ["../../../../up.ways", "file:///up.ways"],
    ["/srv/e.ways", "file:///srv/e.ways"],
    ["D:\\e.ways", "file:///d%3A/e.ways"],
    ["\\\\host\\share\\e.ways", "file:///host/share/e.ways"],
    ["//host/share/e.ways", "file:///host/share/e.ways"],
    ["50%.ways", "file:///a/b/50%25.ways"],
  ])("“%s” is read from %s", (use, expected) => {
    expect(resolveUri("file:///a/b/main.ways", use)).toBe(expected);
  });

  // An editor sends half of a sign where one of its two is deleted; what was read before goes on to be checked.
  it.each(["\ud800", "x\udc00.ways"])(
    "with half of a sign in it is one of a file that is not there: %j",
    async (half) => {
      const path = "file:///a.ways";
      expect(canonical(`file:///${half}`)).toBe(canonical(`file:///${half.toWellFormed()}`));
      const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: resolveUri });
      workspace.open(path, 1, `wayfile 1\nuse "${half}"\n`);
      await workspace.load(path);
      expect(workspace.snapshot(path)?.findings.map(({ check }) => check)).toEqual(["language/use-missing"]);
    },
  );
});

it("a file that is not open is known by its uses alone", () => {
  const text = 'wayfile 1\n  use "a.ways" # use "b.ways"\n# use "c.ways"\nuse "d.ways"\ninstallation "X" {\n}\n';
  expect(useSummary(documentOf(text).segments, (use) => use)).toEqual({
    uses: ["a.ways", "d.ways"],
    hasInstallation: true,
  });
});

describe("a workspace", () => {
  const open = (text: string): Workspace => {
    const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: resolveUri });
    workspace.open("file:///a.ways", 1, text);
    return workspace;
  };

  it("checks again only what an edit touched", () => {
    const workspace = open(generate({ ways: 48 }));
    const before = workspace.snapshot("file:///a.ways")?.installations[0];
    const text = generate({ ways: 48 });
    const line = text.split("\n").findIndex((one) => /^\s+Ib\s/.test(one));
    const place = { line, character: text.split("\n")[line]?.length ?? 0 };
    workspace.edit("file:///a.ways", 2, [{ range: { start: place, end: place }, text: " # edited" }]);
    const after = workspace.snapshot("file:///a.ways")?.installations[0];
    expect(after?.boards[0]?.board).not.toBe(before?.boards[0]?.board);
    expect(after?.boards[1]?.board).toBe(before?.boards[1]?.board);
    const changed = after?.boards[0]?.board.ways.filter((way, at) => way !== before?.boards[0]?.board.ways[at]);
    expect(changed).toHaveLength(1);
  });

  it("drops edits that a whole new text overtakes", () => {
    const workspace = open(loft);
    const far = { line: 9_999, character: 0 };
    workspace.edit("file:///a.ways", 2, [{ range: { start: far, end: far }, text: "x" }, { text: "wayfile 1\n" }]);
    expect(textOf(workspace.snapshot("file:///a.ways")?.file.document ?? documentOf(""))).toBe("wayfile 1\n");
    expect(workspace.version("file:///a.ways")).toBe(2);
  });
});

describe("positions", () => {
  it("tell a way from its copy pasted below it", () => {
    const lines = loft.split("\n");
    const first = lines.findIndex((line) => line.includes("way 9 spare"));
    const place = { line: first + 1, character: 0 };
    const pasted = applyEdit(documentOf(loft), { range: { start: place, end: place }, text: `${lines[first]}\n` });
    expect(new Set(pasted.segments).size).toBe(pasted.segments.length);
  });

  it("carried over an edit are those counted afresh", () => {
    const next = random(5);
    let document = documentOf(loft);
    let carried = new Positions(document);
    for (let round = 0; round < 200; round++) {
      const line = Math.floor(next() * loft.split("\n").length);
      const place = { line, character: Math.floor(next() * 8) };
      const text = ["x", "\n", "} ", "way 7 {\n", ""][Math.floor(next() * 5)] ?? "";
      const end = next() < 0.4 ? { line: line + Math.floor(next() * 2), character: place.character + 2 } : place;
      document = applyEdit(document, { range: { start: place, end }, text });
      carried = new Positions(document, carried);
      const fresh = new Positions(document);
      for (const segment of document.segments) {
        expect(carried.place(segment, 0)).toEqual(fresh.place(segment, 0));
        expect(carried.offset(segment, 0)).toBe(fresh.offset(segment, 0));
      }
    }
  });
});
