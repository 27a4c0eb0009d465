/**
 * A check runs again only where something it asked has another answer, and what is found so is what a program that has
 * just been started finds.
 */
import path from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { Recent } from "../../server/memo/recent.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import { type Edit, Positions, textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import type { Position } from "../../server/text/lines.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText, type LoadedFile, loadFile } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";
import { exampleNames, exampleText } from "../helpers/mutations.ts";
import { random } from "../helpers/random.ts";
import { digitEdit, lineEdits } from "./line-edits.ts";

failures.thrown = true;

const resolve = (from: string, use: string): string =>
  path.posix.normalize(path.posix.join(path.posix.dirname(from), use));

/** All that is found in a file and those it uses, with all that a reader sees of it and where. */
function found(root: LoadedFile, sources: Sources): string[] {
  const { files } = checkProject(root, sources);
  const positions = new Map(files.map(({ file }) => [file, new Positions(file.document)] as const));
  const placeOf = ({ segment, start, end }: Finding["spot"]): unknown => {
    for (const [file, at] of positions) {
      if (at.has(segment)) return [file.path, at.place(segment, start), at.place(segment, end)];
    }
    return "nowhere";
  };
  return files.flatMap(({ file, findings }) =>
    findings.map((finding) => {
      const { spot, related, fixes, ...rest } = finding;
      const edits = fixes.map((fix) => [
        fix.title,
        fix.edits.map(({ start, end, text }) => [placeOf({ ...spot, start, end }), text]),
      ]);
      const beside = related.map((one) => [placeOf(one.spot), one.message]);
      return JSON.stringify([file.path, placeOf(spot), { ...rest, source: rest.source?.standing }, beside, edits]);
    }),
  );
}

/** A folder whose files are read once and kept from edit to edit. */
class Folder {
  readonly #files: Map<string, LoadedFile>;

  constructor(texts: ReadonlyMap<string, string>) {
    this.#files = new Map([...texts].map(([name, text]) => [name, fileOfText(name, text)]));
  }

  get(name: string): LoadedFile {
    const file = this.#files.get(name);
    if (!file) throw new Error(`There is no ${name}.`);
    return file;
  }

  get sources(): Sources {
    return { file: (name) => this.#files.get(name) ?? { failure: "it is not there." }, resolve };
  }

  edit(name: string, edit: Edit): void {
    this.#files.set(name, loadFile(name, applyEdit(this.get(name).document, edit)));
  }

  /** The same texts, read by nobody before. */
  get anew(): Folder {
    return new Folder(new Map([...this.#files].map(([name, { document }]) => [name, textOf(document)])));
  }
}

/**
 * Boards behind boards: what each draws is calculated from those behind it, so that the drop, the loads and the devices of
 * one depend on what another draws from the same feeder.
 */
const deep = `wayfile 1
installation "Mill" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    phases       three
    U0           230 V
    Ze           0.2 Ω
    Ipf          6 kA
    cutout       BS 88-3 100 A
  }
${(
  [
    ["A", "supply", ["B", "C"]],
    ["B", "A", ["D", "E"]],
    ["C", "A", []],
    ["D", "B", ["F"]],
    ["E", "B", []],
    ["F", "D", []],
  ] as const
)
  .map(
    ([name, from, feeds]) => `  board ${name} "Room ${name}" {
    fed-from     ${from}
    main-switch  BS EN 60947-3 80 A
    busbar       100 A
    conditional-rating  6 kA
${[...feeds].map((board, at) => way(at + 1, `feeds ${board}\n      device  BS 88-2 63 A\n      cable  armoured cores 5 line 16 mm² cpc 16 mm²\n      route  tray method E\n      length  ${40 + at} m`)).join("")}${way(8, "device  BS EN 60898 C32 6 kA\n      cable  flat-twin line 4 mm² cpc 1.5 mm²\n      route  clipped method C\n      serves  sockets\n      phase  L1\n      Ib  24 A\n      length  28 m")}${way(9, "device  BS EN 60898 B16 6 kA\n      cable  flat-twin line 2.5 mm² cpc 1.5 mm²\n      route  clipped method C\n      serves  lighting\n      phase  L2\n      Ib  13 A\n      length  19 m")}  }
`,
  )
  .join("")}}
`;

function way(id: number, lines: string): string {
  return `    way ${id} radial "Way ${id}" {\n      ${lines}\n    }\n`;
}

describe("what is kept from edit to edit is what is found anew", () => {
  const examples = new Map([...exampleNames.map((name) => [name, exampleText(name)] as const), ["deep.ways", deep]]);
  const roots = [...examples.keys()].filter((name) => examples.get(name)?.includes("installation "));
  const rounds = Number(process.env.ROUNDS ?? 6);
  /** Each is small, and half of its edits are within a way. */
  const roundsOfDeep = rounds * 10;

  it.each(roots)("of %s", (root) => {
    const next = random(roots.indexOf(root) + Number(process.env.SEED ?? 1));
    const folder = new Folder(examples);
    found(folder.get(root), folder.sources);
    const done: string[] = [];
    const isDeep = root === "deep.ways";
    for (let round = 0; round < (isDeep ? roundsOfDeep : rounds); round++) {
      const { files } = checkProject(folder.get(root), folder.sources);
      const { file } = files[next() < 0.6 ? 0 : Math.floor(next() * files.length)] ?? { file: folder.get(root) };
      const text = textOf(file.document);
      const edit = isDeep && next() < 0.7 ? digitEdit(text, next) : lineEdits(text, next);
      done.push(`${file.path}: ${JSON.stringify(edit)}`);
      folder.edit(file.path, edit);
      const { anew } = folder;
      expect(found(folder.get(root), folder.sources), done.join("\n")).toEqual(found(anew.get(root), anew.sources));
    }
  });
});

describe("how many ways are checked again of two thousand", () => {
  const name = "file:///a.ways";
  const text = generate({ ways: 2_000, seed: 11 });
  const lines = text.split("\n");
  const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
  let version = 0;

  /** Applies an edit and checks to the end. */
  function checked(edit?: Edit): number {
    if (edit) workspace.edit(name, ++version, [edit]);
    const run = workspace.snapshot(name)?.check();
    while (run?.step(1_000) === "more");
    return run?.checked ?? Number.NaN;
  }

  /** The last figure of the first such line, changed to another of its kind. */
  function withDigit(line: RegExp): Edit {
    const at = lines.findIndex((one) => line.test(one));
    const found = /\d(?=\D*$)/.exec(lines[at] ?? "");
    if (!found) throw new Error(`There is no ${line} with a figure.`);
    const range = { start: { line: at, character: found.index }, end: { line: at, character: found.index + 1 } };
    return { range, text: found[0] === "4" ? "6" : "4" };
  }

  beforeAll(() => {
    workspace.open(name, ++version, text);
    expect(checked()).toBe(2_000);
  });

  const onBoard = 24;
  const boards = Math.ceil(2_000 / onBoard);
  /** Rules of a board ask them, each of its own: of no way is anything read again. */
  const ofEachBoard = new Set(["cut-out", "day of design"]);

  it.each<[string, number, RegExp]>([
    ["of a way", 1, /^ +Ib/],
    ["of a way's test", 1, /^ +Zs/],
    ["loop at a board", onBoard, /^ +Zdb/],
    ["fault current at a board", onBoard, /^ {4}Ipf {10}\d/],
    ["switch of a board", onBoard, /main-switch/],
    ["diversity of a board", 0, /diversity/],
    ["title of a board", 0, /^ {2}board/],
    ["tails", 0, /tails/],
    ["earthing conductor", 0, /earthing-conductor/],
    ["cut-out", 0, /cutout/],
    ["bonding", 0, /bonding/],
    ["day the supply was measured", 0, /^ +measured/],
    ["serial of the instrument", 0, /serial/],
    ["when the instrument is due", 0, /due/],
    ["day of design", 0, /designed/],
    ["title of the installation", 0, /^installation/],
  ])("a figure: %s", (what, expected, line) => {
    const edit = withDigit(line);
    // What is looked into anew of a board or a line is added to what was looked at last.
    const looked = vi.spyOn(Recent.prototype, "add");
    expect(checked(edit)).toBe(expected);
    const { length } = looked.mock.calls;
    looked.mockRestore();
    expect(length).toBeLessThanOrEqual(ofEachBoard.has(what) ? boards : onBoard + 1);
  });

  const at = (line: RegExp, from = 0): number => lines.findIndex((one, index) => index >= from && line.test(one));

  it.each<[string, number, RegExp, number]>([
    ["a way", 1, /^ {4}\}$/, 4],
    ["a board", 2 * onBoard, /^ {2}\}$/, 2],
    ["the supply", 0, /^ {2}\}$/, 2],
    ["the instrument", 0, /^\}$/, 0],
  ])("a brace that is lost and put back: %s", (what, most, line, character) => {
    const start = { line: at(line, what === "a board" ? at(/^ {2}board/) : 0), character };
    expect(checked({ range: { start, end: { ...start, character: character + 1 } }, text: "" })).toBeLessThanOrEqual(
      most,
    );
    expect(checked({ range: { start, end: start }, text: "}" })).toBeLessThanOrEqual(most);
  });

  it("a quote that is lost and put back, in each kind of block", () => {
    // That of an instrument is left out: ways ask how the one that is named on their tests is called.
    for (const line of [/^ {4}way/, /^ {2}board/, /^installation/]) {
      const row = at(line);
      const character = lines[row]?.lastIndexOf('"') ?? 0;
      const start = { line: row, character };
      const lost = checked({ range: { start, end: { ...start, character: character + 1 } }, text: "" });
      const back = checked({ range: { start, end: start }, text: '"' });
      expect([String(line), lost <= onBoard, back <= onBoard]).toEqual([String(line), true, true]);
    }
  });

  it("a whole way, typed key by key", () => {
    const typed = `    way 99 radial "Fans" {\n      device  BS EN 60898 B6 6 kA\n      length  12 m\n    }\n`;
    let place = { line: at(/^ {4}way 5/), character: 0 };
    const most: string[] = [];
    for (const key of typed) {
      const count = checked({ range: { start: place, end: place }, text: key });
      // While “way” is not a word yet, its letters are a line of the board.
      if (count > onBoard + 1) most.push(`${JSON.stringify(key)} ${count}`);
      place = key === "\n" ? { line: place.line + 1, character: 0 } : { ...place, character: place.character + 1 };
    }
    expect(most).toEqual([]);
  });
});

describe("a whole board and a whole instrument, typed key by key on a line of their own", () => {
  const name = "file:///typed.ways";
  const text = generate({ ways: 96, seed: 11 });
  const lines = text.split("\n");
  const board = `  board N1 "Annexe" {\n    fed-from     supply\n    main-switch  BS EN 60947-3 100 A\n    Zdb          0.31 Ω\n  }`;
  const instrument = `instrument M9 "Loop tester" {\n  serial  "0001"\n  due     2026-12-01\n}`;

  it.each([
    ["board", board, lines.findIndex((line) => line.startsWith("  board"))],
    ["board between others", board, lines.findLastIndex((line) => line.startsWith("  board"))],
    ["instrument", instrument, lines.findIndex((line) => line.startsWith("instrument"))],
  ])("%s: no way is checked", (_, typed, row) => {
    const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
    let version = 1;
    workspace.open(name, version, text);
    const check = (): number => {
      const run = workspace.snapshot(name)?.check();
      while (run?.step(1_000) === "more");
      return run?.checked ?? Number.NaN;
    };
    expect(check()).toBe(96);
    let place = { line: row, character: 0 };
    const checked: string[] = [];
    const type = (key: string, at: Position): void => {
      workspace.edit(name, ++version, [{ range: { start: at, end: at }, text: key }]);
      const count = check();
      if (count > 0) checked.push(`${JSON.stringify(key)} ${at.line}:${at.character} ${count}`);
    };
    type("\n", place);
    for (const key of typed) {
      type(key, place);
      place = key === "\n" ? { line: place.line + 1, character: 0 } : { ...place, character: place.character + 1 };
    }
    expect(checked).toEqual([]);
  });
});

it("a way that was checked without a supply is checked with it", () => {
  const name = "file:///supply.ways";
  const supply = "  supply {\n    earthing  TN-S\n    U0        230 V\n    Ze        0.31 Ω\n  }\n";
  const way = `  board A "Main" {\n    fed-from  supply\n    way 1 radial "Kiln" {\n      device  BS EN 60898 B32 6 kA\n      live 2026-03-05 {\n        Zs  1.61 Ω\n      }\n    }\n  }\n`;
  const head = 'wayfile 1\ninstallation "Pottery" {\n  standard BS 7671:2018+A2:2022\n  stage tested\n';
  const before = new Folder(new Map([[name, `${head}${way}}\n`]]));
  const without = found(before.get(name), before.sources);
  before.edit(name, { range: { start: { line: 4, character: 0 }, end: { line: 4, character: 0 } }, text: supply });
  const { anew } = before;
  const fresh = found(anew.get(name), anew.sources);
  expect(found(before.get(name), before.sources)).toEqual(fresh);
  const overLimit = (all: readonly string[]): number =>
    all.filter((one) => one.includes('"loop/zs-over-limit"')).length;
  expect([overLimit(without), overLimit(fresh)]).toEqual([0, 1]);
});

describe("schedules over one shared file", () => {
  const boards = generate({ ways: 48, seed: 11 });
  const cut = boards.indexOf("  board ");
  const head = boards.slice(boards.indexOf("installation"), cut);
  const shared = `${boards.slice(0, boards.indexOf("installation"))}${boards.slice(cut, boards.lastIndexOf("}"))}`;
  const name = "file:///shared.ways";

  /** How many ways are checked after a figure of the shared file is changed, with as many schedules over it. */
  async function checkedOf(line: RegExp, heads: readonly string[]): Promise<number> {
    const texts = new Map([[name, shared]]);
    for (const [at, one] of heads.entries())
      texts.set(`file:///root${at}.ways`, `wayfile 1\nuse "shared.ways"\n${one}}\n`);
    const read = async (file: string) => {
      const text = texts.get(file);
      return text === undefined ? { failure: "there is none." } : { text };
    };
    const workspace = new Workspace({ read, resolve: (_, use) => `file:///${use}` });
    await workspace.index(Promise.resolve([...texts.keys()]));
    workspace.open(name, 1, shared);
    await workspace.load(name);
    const check = (): number => {
      const run = workspace.snapshot(name)?.check();
      while (run?.step(1_000) === "more");
      return run?.checked ?? Number.NaN;
    };
    check();
    const lines = shared.split("\n");
    const row = lines.findIndex((one) => line.test(one));
    const character = /\d(?=\D*$)/.exec(lines[row] ?? "")?.index ?? Number.NaN;
    const range = { start: { line: row, character }, end: { line: row, character: character + 1 } };
    workspace.edit(name, 2, [{ range, text: lines[row]?.[character] === "4" ? "6" : "4" }]);
    return check();
  }

  const named = ["One", "Two", "Three"].map((title) => head.replace(/"[^"]*"/, `"${title}"`));
  const apart = named.map((one, at) => one.replace(/^( +U0 +)\S+/m, `$1${230 + at}`));

  it("what is equal in them is checked once", async () => {
    expect(await checkedOf(/^ +Ib/, named)).toBe(1);
    expect(await checkedOf(/^ +Zdb/, named)).toBe(24);
    expect(await checkedOf(/^ +serial/, named)).toBe(0);
  });

  it("what differs costs the changed part in each", async () => {
    expect(await checkedOf(/^ +Ib/, apart)).toBe(3);
    expect(await checkedOf(/^ +Zdb/, apart)).toBe(3 * 24);
    expect(await checkedOf(/^ +serial/, apart)).toBe(0);
  });
});

describe("a slip in a line of every kind, and back", () => {
  const name = "file:///kinds.ways";
  const ways = Number(process.env.WAYS ?? 48);
  const lines = generate({ ways, seed: 11 }).split("\n");
  const onBoard = 24;
  /** What all ways are judged by: the edition, the stage, what the work is, that there is a supply, and an instrument's name. */
  const ofAll = new Set(["instrument", "installation"]);
  const ofAllWithin = new Set(["standard", "stage", "work", "premises", "installed", "supply"]);
  /** Of the supply; what a loop starts from only where a board has no figure of its own. */
  const ofAllOnSupply = new Set(["earthing", "phases", "U0"]);

  /** The first line of each word in each kind of block, with the blocks it stands in. */
  const kinds = new Map<string, { readonly row: number; readonly within: readonly string[]; readonly word: string }>();
  const within: string[] = [];
  for (const [row, line] of lines.entries()) {
    const word = /^\s*([\w-]+)/.exec(line)?.[1] ?? "";
    const key = [...within, word].join(" ");
    if (word !== "" && word !== "wayfile" && !kinds.has(key)) kinds.set(key, { row, within: [...within], word });
    if (/\{\s*$/.test(line)) within.push(word);
    if (/^\s*\}/.test(line)) within.pop();
  }

  const most = ({ within: blocks, word }: { within: readonly string[]; word: string }): number => {
    if (blocks.includes("way")) return 1;
    if (blocks.includes("board")) return onBoard;
    if (blocks.length === 0) return ofAll.has(word) ? ways : 0;
    return (blocks.length === 1 ? ofAllWithin : ofAllOnSupply).has(word) ? ways : 0;
  };

  it(`checks no way of ${ways} that does not depend on it`, () => {
    const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
    let version = 1;
    workspace.open(name, version, lines.join("\n"));
    const check = (): number => {
      const run = workspace.snapshot(name)?.check();
      while (run?.step(1_000) === "more");
      return run?.checked ?? Number.NaN;
    };
    check();
    const beyond: string[] = [];
    for (const [key, kind] of kinds) {
      const line = lines[kind.row] ?? "";
      for (const character of [line.search(/\S/) + 1, line.length]) {
        const start = { line: kind.row, character };
        const counts = ["x", ""].map((text) => {
          const end = { line: kind.row, character: character + (text === "" ? 1 : 0) };
          workspace.edit(name, ++version, [{ range: { start, end }, text }]);
          return check();
        });
        if (counts.some((count) => count > most(kind))) beyond.push(`${key} ${character}: ${counts.join(", ")}`);
      }
    }
    expect(kinds.size).toBeGreaterThan(40);
    expect(beyond).toEqual([]);
  });
});
