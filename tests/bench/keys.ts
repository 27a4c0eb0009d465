/**
 * What each key costs, by typing: whole parts key by key, braces and quotes lost and put back, figures changed on lines
 * of every kind, with one schedule over a file and with five. A measurement, not a test: `npm run bench:keys [ways…]`,
 * `--short` for a quick look. What was measured is kept in `.build/keys.json`, and the next run is shown beside it.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { performance } from "node:perf_hooks";
import { cpuUsage } from "node:process";
import json from "vscode-json-languageservice";
import { parse } from "../../grammar/parser.ts";
import type { Edit } from "../../server/syntax/document.ts";
import { split } from "../../server/syntax/split.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";
import { recordSchema } from "./record-schema.ts";
import { recordsOf } from "./records.ts";

const isShort = process.argv.includes("--short");
const asked = process.argv
  .slice(2)
  .map(Number)
  .filter((size) => size > 0);
const sizes = asked.length > 0 ? asked : isShort ? [12, 1_000] : [12, 1_000, 10_000];

/** ms of each key: by the clock, and of processor. */
interface Key {
  readonly wall: number;
  readonly cpu: number;
  readonly checked: number;
}

interface Row {
  readonly median: number;
  readonly p99: number;
  readonly worst: number;
  /** Of processor, the median and the worst. */
  readonly cpu: number;
  readonly cpuWorst: number;
  /** The most ways that one key had checked. */
  readonly checked: number;
}

const at = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;

function rowOf(keys: readonly Key[]): Row {
  const wall = keys.map((key) => key.wall);
  const cpu = keys.map((key) => key.cpu);
  return {
    median: at(wall, 0.5),
    p99: at(wall, 0.99),
    worst: Math.max(...wall),
    cpu: at(cpu, 0.5),
    cpuWorst: Math.max(...cpu),
    checked: Math.max(...keys.map(({ checked }) => checked)),
  };
}

const shared = "file:///bench/shared.ways";

/** A shared file of boards under some schedules, or one file that is all. */
class Desk {
  readonly #workspace: Workspace;
  readonly #lines: string[];
  #version = 1;

  private constructor(workspace: Workspace, text: string) {
    this.#workspace = workspace;
    this.#lines = text.split("\n");
  }

  static async open(ways: number, schedules: number): Promise<Desk> {
    const text = generate({ ways, seed: 11 });
    const boards = text.indexOf("  board ");
    const head = text.slice(0, boards);
    const rest = text.slice(boards, text.lastIndexOf("}"));
    const installation = head.indexOf("installation");
    const texts = new Map([[shared, `${head.slice(0, installation)}${rest}`]]);
    for (let one = 1; one <= schedules; one++) {
      const root = `wayfile 1\nuse "shared.ways"\n${head.slice(installation).replace(/"[^"]*"/, `"Schedule ${one}"`)}}\n`;
      texts.set(`file:///bench/root${one}.ways`, root);
    }
    if (schedules === 1) texts.clear();
    const read = async (file: string) => {
      const found = texts.get(file);
      return found === undefined ? { failure: "it is not there." } : { text: found };
    };
    const workspace = new Workspace({ read, resolve: resolveUri });
    await workspace.index(Promise.resolve([...texts.keys()]));
    const own = texts.get(shared) ?? text;
    workspace.open(shared, 1, own);
    await workspace.load(shared);
    const desk = new Desk(workspace, own);
    desk.#check();
    return desk;
  }

  #check(): number {
    const run = this.#workspace.snapshot(shared)?.check();
    while (run?.step(1_000) === "more");
    return run?.checked ?? 0;
  }

  /** The first line from here on that matches. */
  find(line: RegExp, from = 0): number {
    return this.#lines.findIndex((one, index) => index >= from && line.test(one));
  }

  line(index: number): string {
    return this.#lines[index] ?? "";
  }

  get middle(): number {
    return this.find(/^ +board/, this.#lines.length >> 1) >= 0
      ? this.find(/^ +board/, this.#lines.length >> 1)
      : this.find(/^ +board/);
  }

  /** Replaces some signs of a line and checks until all is known. */
  type(line: number, from: number, until: number, text: string): Key {
    const range = { start: { line, character: from }, end: { line, character: until } };
    return this.edit({ range, text });
  }

  edit(edit: Edit): Key {
    const before = cpuUsage();
    const start = performance.now();
    this.#workspace.edit(shared, ++this.#version, [edit]);
    const checked = this.#check();
    const wall = performance.now() - start;
    const { user, system } = cpuUsage(before);
    this.#apply(edit);
    return { wall, cpu: (user + system) / 1_000, checked };
  }

  /** Keeps its own lines as they stand in the editor. */
  #apply({ range, text }: Edit): void {
    if (!range) return;
    const [first, last] = [this.line(range.start.line), this.line(range.end.line)];
    const joined = first.slice(0, range.start.character) + text + last.slice(range.end.character);
    this.#lines.splice(range.start.line, range.end.line - range.start.line + 1, ...joined.split("\n"));
  }

  /** Types lines above a line key by key: Enter makes room for them first. */
  typed(text: string, line: number, character = 0): Key[] {
    let place = { line, character };
    const room = this.type(line, character, character, "\n");
    const keys = [...text.replace(/\n$/, "")].map((key) => {
      const cost = this.type(place.line, place.character, place.character, key);
      place =
        key === "\n" ? { line: place.line + 1, character: 0 } : { ...place, character: place.character + key.length };
      return cost;
    });
    return [room, ...keys];
  }

  without(line: number, lines: number): Key {
    return this.edit({ range: { start: { line, character: 0 }, end: { line: line + lines, character: 0 } }, text: "" });
  }
}

const newWay = `    way 99 radial "Fans" {
      device  BS EN 60898 B6 6 kA
      cable   flat-twin line 1.5 mm² cpc 1 mm²
      route   clipped method C
      length  12 m
      serves  ventilation
      live 2026-03-05 with M1 {
        Zs  0.62 Ω
      }
    }
`;
const newBoard = `  board N1 "Annexe" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    Zdb          0.31 Ω
  }
`;
const newInstrument = `instrument M9 "Loop tester" {
  serial  "0001"
  due     2026-12-01
}
`;

type Scenario = readonly [name: string, run: (desk: Desk, rounds: number) => Key[]];

const figures = (name: string, line: RegExp, isInBoards: boolean): Scenario => [
  name,
  (desk, rounds) => {
    const row = desk.find(line, isInBoards ? desk.middle : 0);
    const found = /\d(?=\D*$)/.exec(desk.line(row));
    if (!found) return [];
    const { index } = found;
    const keys = Array.from({ length: rounds }, (_, round) =>
      desk.type(row, index, index + 1, String((round % 8) + 1)),
    );
    keys.push(desk.type(row, index, index + 1, found[0]));
    return keys;
  },
];

const typedAt = (name: string, text: string, line: RegExp, isInBoards = true): Scenario => [
  name,
  (desk) => {
    const row = desk.find(line, isInBoards ? desk.middle : 0);
    if (row < 0) return [];
    const keys = desk.typed(text, row);
    return [...keys, desk.without(row, text.split("\n").length - 1)];
  },
];

/** One sign of a line taken away and put back. */
const lost = (name: string, line: RegExp, sign: string, isInBoards = true): Scenario => [
  name,
  (desk, rounds) => {
    const row = desk.find(line, isInBoards ? desk.middle : 0);
    const character = desk.line(row).lastIndexOf(sign);
    if (row < 0 || character < 0) return [];
    return Array.from({ length: rounds }, () => [
      desk.type(row, character, character + 1, ""),
      desk.type(row, character, character, sign),
    ]).flat();
  },
];

/** A line begun below another, and taken away again. */
const entered = (name: string, line: RegExp, isInBoards = true): Scenario => [
  name,
  (desk, rounds) => {
    const row = desk.find(line, isInBoards ? desk.middle : 0);
    if (row < 0) return [];
    return Array.from({ length: rounds }, () => {
      const end = desk.line(row).length;
      const down = desk.type(row, end, end, "\n");
      return [down, desk.without(row + 1, 1)];
    }).flat();
  },
];

const scenarios: readonly Scenario[] = [
  figures("figure of a way", /^ +Ib/, true),
  figures("figure of a test", /^ +Zs/, true),
  figures("loop at a board", /^ +Zdb/, true),
  figures("diversity of a board", /^ +diversity/, true),
  figures("loop at the origin", /^ +Ze/, false),
  figures("tails", /^ +tails/, false),
  figures("instrument is due", /^ +due/, false),
  typedAt("a whole way", newWay, /^ +way 3/),
  typedAt("a whole board", newBoard, /^ +board/),
  typedAt("a whole instrument", newInstrument, /^instrument/, false),
  lost("} of a way", /^ {4}\}$/, "}"),
  lost("{ of a way", /^ +way 5/, "{"),
  lost("} of a board", /^ {2}\}$/, "}"),
  lost("{ of a board", /^ +board/, "{"),
  lost("} of the supply", /^ {2}\}$/, "}", false),
  lost("quote of a way", /^ +way 5/, '"'),
  lost("quote of a board", /^ +board/, '"'),
  entered("Enter in a way", /^ +device/),
  entered("Enter on a board", /^ +Zdb/),
  entered("Enter in the supply", /^ +tails/, false),
  entered("Enter at the top", /^wayfile/, false),
];

const wide = (value: number): string => value.toFixed(value < 10 ? 2 : value < 100 ? 1 : 0).padStart(8);

const file = path.join(import.meta.dirname, "../../.build/keys.json");

function before(): Record<string, Row> {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return {};
  }
}

const known = before();
const measured: Record<string, Row> = { ...known };

function show(key: string, name: string, row: Row): void {
  measured[key] = row;
  const was = known[key];
  const beside = was ? `   was ${wide(was.cpu)} ${wide(was.cpuWorst)}` : "";
  console.log(
    `  ${name.padEnd(24)} ${wide(row.median)} ${wide(row.p99)} ${wide(row.worst)}   cpu ${wide(row.cpu)} ${wide(row.cpuWorst)}   checked ${String(row.checked).padStart(6)}${beside}`,
  );
}

/** The same text as JSON records to a general-purpose service, and to the bare parser. */
async function peers(ways: number): Promise<void> {
  const text = generate({ ways, seed: 11 });
  const records = recordsOf(text);
  const service = json.getLanguageService({});
  service.configure({ validate: true, schemas: [{ uri: "mem://records", fileMatch: ["*"], schema: recordSchema }] });
  const keys: Key[] = [];
  const bare: Key[] = [];
  const cost = async (run: () => unknown): Promise<Key> => {
    const [cpu, start] = [cpuUsage(), performance.now()];
    await run();
    const { user, system } = cpuUsage(cpu);
    return { wall: performance.now() - start, cpu: (user + system) / 1_000, checked: 0 };
  };
  for (let round = 0; round < (isShort ? 5 : 12); round++) {
    const document = json.TextDocument.create("file:///bench.json", "json", round, records);
    keys.push(await cost(() => service.doValidation(document, service.parseJSONDocument(document))));
    bare.push(await cost(() => split(text).map((segment) => parse(segment.text, segment.mends))));
  }
  show(`${ways} JSON`, "JSON service, any key", rowOf(keys));
  show(`${ways} parse`, "bare parse of all", rowOf(bare));
}

console.log("ms: median, 99 %, worst by the clock; median and worst of processor; most ways one key had checked");
for (const ways of sizes) {
  await peers(ways);
  for (const schedules of isShort ? [1] : [1, 5]) {
    const desk = await Desk.open(ways, schedules);
    console.log(
      `\n${ways.toLocaleString("en")} ways, ${schedules === 1 ? "one file" : `${schedules} schedules over one file`}`,
    );
    for (const [name, run] of scenarios) {
      run(desk, 2);
      const keys = run(desk, isShort ? 5 : 12);
      if (keys.length > 0) show(`${ways} ${schedules} ${name}`, name, rowOf(keys));
    }
    console.log(`  resident ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MiB`);
  }
}
mkdirSync(path.dirname(file), { recursive: true });
writeFileSync(file, JSON.stringify(measured, undefined, 1));
