/** House rules that a reviewer would otherwise have to remember. */
import { isUtf8 } from "node:buffer";
import { globSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { rules } from "../server/rules/list.ts";

const root = path.dirname(import.meta.dirname);
const itself = "tests/tidy.test.ts";

interface Source {
  readonly file: string;
  readonly text: string;
}

const read = (...patterns: string[]): Source[] =>
  globSync(patterns, { cwd: root })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => file !== itself && !file.includes("node_modules/"))
    .filter((file) => statSync(path.join(root, file)).isFile())
    .sort()
    .map((file) => ({ file, text: readFileSync(path.join(root, file), "utf8") }));

const sources = read("grammar/*.ts", "server/**/*.ts", "client/**/*.{ts,tsx}");
const tests = read("tests/**/*.ts");

/** A room is a folder; below `server`, each folder is one. */
const roomOf = (file: string): string => /^(?:server\/[^/]+|client\/(?:page|web)(?=\/)|[^/]+)/.exec(file)?.[0] ?? file;

const below = [
  "grammar",
  "server/memo",
  "server/text",
  "server/tables",
  "server/calc",
  "server/syntax",
  "server/model",
];
/** What follows from a schedule: of one way, of what is laid together, of what was read, of what boards add up. */
const study = ["server/circuit", "server/conduits", "server/readings", "server/boards"];
const core = [
  ...below,
  ...study,
  "server/diagnosis",
  "server/drawings",
  "server/rules",
  "server/proposal",
  "server/reports",
  "server/views",
  "server/format",
  "server/merge",
  "server/workspace",
  "server/features",
  "server/settings",
  "server/results",
];

/** Who may import whom, besides itself: rooms of ours, and packages by the start of their names. */
const rooms: Readonly<Record<string, readonly string[]>> = {
  grammar: ["chevrotain"],
  "server/memo": [],
  "server/text": [],
  "server/tables": ["server/memo"],
  "server/calc": ["server/memo", "server/tables"],
  "server/syntax": ["grammar", "server/memo", "server/text"],
  "server/model": [
    "grammar",
    "server/memo",
    "server/text",
    "server/syntax",
    "server/tables",
    "chevrotain",
    "fastest-levenshtein",
  ],
  "server/circuit": below,
  "server/conduits": [...below, "server/circuit"],
  "server/readings": [...below, "server/circuit", "server/conduits"],
  "server/boards": [...below, "server/circuit", "server/conduits", "server/readings"],
  "server/diagnosis": ["server/memo", "server/text", "server/tables", "server/calc", "server/model", ...study],
  "server/drawings": [
    "server/text",
    "server/syntax",
    "server/tables",
    "server/calc",
    "server/model",
    ...study,
    "server/diagnosis",
  ],
  "server/rules": [...below, ...study, "server/diagnosis", "fastest-levenshtein"],
  "server/format": [...below, ...study, "chevrotain"],
  "server/merge": [...below, "server/format", "server/readings/address.ts", "chevrotain"],
  "server/proposal": [...below, ...study, "server/rules", "server/format"],
  "server/reports": [
    "grammar",
    "server/text",
    "server/tables",
    "server/calc",
    "server/model",
    ...study,
    "server/drawings",
    "server/rules",
  ],
  "server/entry": [...below, ...study, "server/format", "server/proposal"],
  "server/papers": [
    "node:crypto",
    "node:fs",
    "node:module",
    ...below,
    ...study,
    "server/entry",
    "server/reports",
    "csv-parse",
    "dejavu-fonts-ttf",
    "pdfkit",
    "fflate",
    "read-excel-file",
    "write-excel-file",
  ],
  "server/views": [
    ...below,
    ...study,
    "server/diagnosis",
    "server/drawings",
    "server/rules",
    "server/reports",
    "server/format",
  ],
  "server/workspace": [...below, ...study, "server/rules", "server/format", "vscode-uri"],
  "server/settings": ["server/text", "server/model", "server/rules", "ignore", "jsonc-parser"],
  "server/results": [...below, ...study, "server/rules", "server/reports", "server/workspace"],
  "server/library": core,
  "server/features": [...core, "chevrotain", "fastest-levenshtein"],
  "server/disk": ["server/text", "node:"],
  "server/git": ["node:"],
  "server/lsp": [...core, "vscode-languageserver"],
  "server/cli": [
    ...core,
    "server/disk",
    "server/git",
    "server/entry",
    "server/papers",
    "node:",
    "commander",
    "diff",
    "ignore",
    "picocolors",
    "string-width",
    "tinyglobby",
    "package.json",
  ],
  "server/checked.ts": ["node:"],
  "server/main.node.ts": [
    ...core,
    "server/checked.ts",
    "server/office.node.ts",
    "server/lsp",
    "server/disk",
    "server/git",
    "server/entry",
    "server/papers",
    "vscode-languageserver",
    "node:",
  ],
  "server/office.node.ts": [...core, "server/lsp", "server/papers", "server/entry", "node:"],
  "server/main.cli.ts": [...core, "server/checked.ts", "server/cli", "node:"],
  "server/start.ts": ["server/checked.ts", "server/cli/cache-folder.ts", "node:"],
  "server/start.node.ts": ["server/start.ts"],
  "server/start.cli.ts": ["server/start.ts", "node:"],
  client: [
    "vscode",
    "vscode-languageclient",
    "server/lsp/protocol.ts",
    "server/lsp/view-protocol.ts",
    "server/lsp/past-protocol.ts",
    "server/lsp/review-protocol.ts",
    "server/lsp/paper-protocol.ts",
    "server/lsp/placed.ts",
    "client/page/messages.ts",
    "server/views",
    "node:path",
  ],
  "client/web": [
    "client",
    "vscode",
    "vscode-languageclient",
    "vscode-languageserver",
    "server/text/decode.ts",
    "server/lsp",
  ],
  "client/page": ["preact", "server/lsp/view-protocol.ts", "server/lsp/placed.ts", "server/views", "server/drawings"],
};

/** The one file of the grammar that is a program: it writes what is derived from the rest. */
const writer = "grammar/generate.ts";

const importsOf = ({ file, text }: Source): string[] =>
  [...text.matchAll(/^(?:import|export)\b[^"';]*?\bfrom "([^"]+)"|^import "([^"]+)"|\bimport\("([^"]+)"\)/gm)].map(
    (match) => {
      const name = match[1] ?? match[2] ?? match[3] ?? "";
      return name.startsWith(".") ? path.posix.join(path.posix.dirname(file), name) : name;
    },
  );

const allows = (allowed: string, name: string): boolean =>
  name === allowed || name.startsWith(allowed.endsWith(":") ? allowed : `${allowed}/`);

/** Files that import each other in a circle, types included: what is left once all ends are taken off. */
function circlesAmong(all: readonly Source[]): string[] {
  let left = new Map(all.map((source) => [source.file, importsOf(source)]));
  for (;;) {
    const imported = new Set([...left.values()].flat());
    const within = [...left].filter(([file, names]) => imported.has(file) && names.some((name) => left.has(name)));
    if (within.length === left.size) return [...left.keys()];
    left = new Map(within);
  }
}

describe("rooms", () => {
  test("every room is in the table", () => {
    const unknown = [...new Set(sources.map(({ file }) => roomOf(file)))].filter((room) => !(room in rooms));
    expect(unknown).toEqual([]);
  });

  test.each(Object.keys(rooms))("%s imports only what it may", (room) => {
    const own = sources.filter(({ file }) => roomOf(file) === room && file !== writer);
    const wrong = own.flatMap((source) =>
      importsOf(source)
        .filter((name) => roomOf(name) !== room && !(rooms[room] ?? []).some((allowed) => allows(allowed, name)))
        .map((name) => `${source.file} imports ${name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("each room knows only those above it in the map", () => {
    const map = readFileSync(path.join(root, "DEVELOPERS.md"), "utf8");
    const order = [...map.matchAll(/^\| `((?:server\/)?\w+)\/` \|/gm)].map(([, room = ""]) => room);
    expect(order.length).toBeGreaterThan(25);
    const wrong = sources.flatMap((source) =>
      importsOf(source)
        .filter((name) => order.indexOf(roomOf(name)) > order.indexOf(roomOf(source.file)))
        .filter(() => order.includes(roomOf(source.file)))
        .map((name) => `${source.file} imports ${name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("no files import each other in a circle", () => {
    expect(circlesAmong(sources)).toEqual([]);
    const example = [
      { file: "a.ts", text: 'import { b } from "./b.ts";' },
      { file: "b.ts", text: 'import type { C } from "./c.ts";' },
      { file: "c.ts", text: 'import { b } from "./b.ts";' },
    ];
    expect(circlesAmong(example)).toEqual(["b.ts", "c.ts"]);
  });

  test("no rule imports another", () => {
    const family = /^server\/rules\/(?!common\/|frame\/)[^/]+\//;
    const wrong = sources
      .filter(({ file }) => family.test(file))
      .flatMap((source) =>
        importsOf(source)
          .filter((name) => family.test(name) || name === "server/rules/list.ts")
          .map((name) => `${source.file} imports ${name}`),
      );
    expect(wrong).toEqual([]);
  });
});

/** Lines of sources that match, without those of comments. */
const linesWith = (pattern: RegExp, where: readonly Source[]): string[] =>
  where.flatMap(({ file, text }) =>
    text.split("\n").flatMap((line, index) => {
      const code = line.replace(/^\s*(?:\/\/|\*|\/\*).*/, "");
      return pattern.test(code) ? [`${file}:${index + 1} ${line.trim()}`] : [];
    }),
  );

const coreSources = sources.filter(({ file }) => core.includes(roomOf(file)) && file !== writer);

describe("the core", () => {
  test("reads no clock and rolls no dice", () => {
    expect(linesWith(/\bDate\.now\b|new Date\(\s*\)|\bMath\.random\b|\bperformance\./, coreSources)).toEqual([]);
  });

  test("makes days of written dates only", () => {
    const wrong = linesWith(/\bnew Date\(/, coreSources).filter((line) => !line.includes("T00:00:00Z"));
    expect(wrong).toEqual([]);
  });

  test("writes to no console and ends no process", () => {
    expect(linesWith(/(?<!connection\.)\bconsole\.|\bprocess\./, coreSources)).toEqual([]);
  });

  test("throws only where a table of its own lacks a row, which a test of that table would show first", () => {
    const thrown = linesWith(/\bthrow (?:new|error)\b/, coreSources);
    const wrong = thrown.filter((line) => !/(?:calc|tables|circuit)\/.*(?:lacks|holds no)|failures\.thrown/.test(line));
    expect(wrong).toEqual([]);
  });
});

/** What a module would go on keeping once nobody needs it any more. */
const stores: readonly RegExp[] = [
  /^(?:export )?let /,
  /^(?:export )?const .*\bnew Weak(?:Map|Set|Ref)\b/,
  // Empty, so there to be filled; a table that is built of constants names them.
  /^(?:export )?const .*?= new (?:Map|Set)(?:<[^=(]*>)?\(\)/,
  /^(?:export )?const \w+(?:: (?!readonly|Readonly).+)? = (?:\[\]|\{\});/,
  /^ {2}static (?!readonly\b)#?\w+(?::[^=(]+)? =/,
];

/** Why each of these may stand all the same. */
const storesAllowed: Readonly<Record<string, string>> = {
  "server/model/reads.ts export let recorder: Recorder | undefined;":
    "Who notes what is asked, from the beginning of a call to its end: nothing is left of it.",
  "client/extension.ts let server: Server | undefined;": "The editor starts and ends an extension by its module.",
  "client/web/worker.ts const waiting: (() => void)[] = [];": "A worker is one server: it ends with it.",
  "grammar/generate.ts const stale: string[] = [];": "A program of its own.",
};

describe("everywhere", () => {
  test("no module keeps anything: what is kept lies with what it is about, or with an engine", () => {
    const kept = sources.flatMap(({ file, text }) =>
      text.split("\n").flatMap((line) => (stores.some((store) => store.test(line)) ? [`${file} ${line}`] : [])),
    );
    expect(kept.sort()).toEqual(Object.keys(storesAllowed).sort());
    const examples = [
      "const kept = new WeakMap<Way, Study>();",
      "const byName = new Map<string, readonly Way[]>();",
      "export const seen: Map<string, Way> = new Map();",
      "let count = 0;",
      "const found: string[] = [];",
      "  static #all = new Map<string, Way>();",
    ];
    expect(examples.filter((line) => !stores.some((store) => store.test(line)))).toEqual([]);
  });

  test("only memos make functions that keep their answers", () => {
    const makers = sources.filter(({ text }) => /^export (?:const|function) memo(?:By|In|Of)\w+/m.test(text));
    expect(makers.map(({ file }) => file)).toEqual(["server/circuit/kept.ts"]);
    expect(linesWith(/\bnew (?:WeakMap|WeakSet|Map)\b/, makers)).toEqual([]);
  });

  test("only what this program made itself is shown without being escaped", () => {
    const wrong = linesWith(/\.asItStands\b/, sources).map((line) => line.replace(/:.*/, ""));
    expect(new Set(wrong)).toEqual(
      new Set([
        "server/cli/colours.ts",
        "server/cli/say.ts",
        "server/reports/register/page.ts",
        "server/papers/fill-sheet.ts",
        "server/reports/setting/html.ts",
        "server/text/html.ts",
        "server/text/markdown.ts",
      ]),
    );
  });

  test("only the terminal and the wire write to the streams of the process", () => {
    const wrong = linesWith(/\bprocess\.std(?:out|err)\b/, sources).map((line) => line.replace(/:.*/, ""));
    expect(new Set(wrong)).toEqual(new Set(["server/cli/terminal.ts", "server/start.ts", "server/main.node.ts"]));
  });

  test("only the command line and what builds write to a console", () => {
    const wrong = linesWith(/(?<!connection\.)\bconsole\./, sources).filter(
      (line) => !line.startsWith("server/cli/") && !line.startsWith(writer),
    );
    expect(wrong).toEqual([]);
  });

  test("packages that run stand under dependencies, all others under devDependencies", () => {
    const { dependencies, devDependencies } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));
    const imports = sources.flatMap(({ text }) => [
      ...text.matchAll(/^(?:(?:import|export|\}).* from |import )"((?:@[\w.-]+\/)?[a-z][\w:.-]*)(?:\/[\w./-]*)?";/gm),
    ]);
    const used = new Set(imports.flatMap(([, name = ""]) => (/^(?:node:|vscode$)/.test(name) ? [] : [name])));
    // A typeface is a file and no module.
    expect([...used, "dejavu-fonts-ttf"].sort()).toEqual(Object.keys(dependencies).sort());
    expect(Object.keys(devDependencies).filter((name) => used.has(name))).toEqual([]);
  });

  test("no test is left focused or skipped", () => {
    expect(linesWith(/\.(?:only|skip|todo|fails)\(|\b(?:fdescribe|fit|xit|xdescribe)\(/, tests)).toEqual([]);
  });

  test("nothing is left to do, switched off or tied to one machine", () => {
    const marks =
      /\b(?:TODO|FIXME|XXX|HACK)\b|@ts-(?:ignore|nocheck|expect-error)|\bdebugger;|(?<!file:\/\/)\/(?:home|Users|root|work)\/\w/;
    const all = [...sources, ...tests, ...read("*.md", "grammar/*.md", "examples/**/*")];
    expect(all.filter(({ text }) => marks.test(text)).map(({ file }) => file)).toEqual([]);
  });

  test("text files are in UTF-8 with line feeds", () => {
    const all = [...sources, ...tests, ...read("*.md", "grammar/**/*.{md,json}", "examples/**/*.ways")];
    const isRight = ({ file, text }: Source) => isUtf8(readFileSync(path.join(root, file))) && !text.includes("\r\n");
    expect(all.filter((source) => !isRight(source)).map(({ file }) => file)).toEqual([]);
  });

  test.each(rules.map((rule) => [rule.id, rule] as const))("%s says what it is and shows it", (id, rule) => {
    expect(id).toMatch(/^[a-z][a-z-]*\/[a-z][a-z0-9-]*$/);
    expect(rule.examples.length).toBeGreaterThan(0);
    expect(rule.title.length).toBeGreaterThan(10);
    expect(rule.why.length).toBeGreaterThan(20);
  });
});
