/** The settings of a repository from their text; what is wrong with it has a place and a sentence, and is left out. */

import { createScanner, type Node, type ParseError, parseTree, printParseErrorCode } from "jsonc-parser";
import { nearest } from "../model/suggestions.ts";
import { nearestPages, pageOf, pages } from "../rules/frame/catalogue.ts";
import { type Severity, severities } from "../rules/frame/rule.ts";
import { isDay } from "../text/days.ts";
import { lineStarts, type Position, positionOf } from "../text/lines.ts";
import { isOneOf, listed } from "../text/words.ts";
import { type Keys, type Kind, keys } from "./keys.ts";
import { familyOf, isAlwaysShown, noSettings, type Settings, type Suppression } from "./settings.ts";

/** A fault of the settings: where, from zero, and what. */
interface SettingsProblem {
  readonly start: Position;
  readonly end: Position;
  readonly message: string;
}

export interface ReadSettings {
  readonly settings: Settings;
  readonly problems: readonly SettingsProblem[];
}

/** Comments and a comma too many are let through, as in other settings that people write by hand. */
export function readSettings(text: string): ReadSettings {
  const errors: ParseError[] = [];
  const refused = refusal(text);
  if (refused) {
    const reader = new Reader(text);
    reader.report(refused.at, 1, refused.message);
    return { settings: noSettings, problems: reader.problems };
  }
  const root = parseTree(text, errors, { allowTrailingComma: true });
  const reader = new Reader(text);
  for (const { error, offset, length } of errors) reader.report(offset, length, parseSentence(error));
  if (!root) {
    if (errors.length === 0)
      reader.report(0, 0, "This file is empty: the settings are a JSON object, {} at the least.");
    return { settings: noSettings, problems: reader.problems };
  }
  const value = reader.value(root, { is: "object", keys }, "This file");
  return { settings: errors.length > 0 ? noSettings : settingsOf(value, reader), problems: reader.problems };
}

/** A repository can come from a stranger: its settings are read whenever a schedule of it is. */
const mostSigns = 200_000;
const deepest = 16;
const mostEntries = 1_000;
const mostProblems = 100;

function refusal(text: string): { readonly at: number; readonly message: string } | undefined {
  if (text.length > mostSigns) return { at: 0, message: `Settings have ${mostSigns} signs at the most.` };
  const scanner = createScanner(text, true);
  let depth = 0;
  while (scanner.getPosition() < text.length) {
    scanner.scan();
    const sign = text[scanner.getTokenOffset()] ?? "";
    if (sign === "[" || sign === "{") depth++;
    if (sign === "]" || sign === "}") depth--;
    if (depth > deepest)
      return { at: scanner.getTokenOffset(), message: "Nothing in the settings stands so deep in [ ] and { }." };
  }
  return undefined;
}

function parseSentence(error: number): string {
  const words = printParseErrorCode(error)
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
  return `This is not JSON: ${words}.`;
}

type Plain = string | number | readonly Found[] | ReadonlyMap<string, Found>;

/** A value that is what it should be, and where it stands. */
interface Found {
  readonly value: Plain;
  readonly at: number;
}

class Reader {
  readonly problems: SettingsProblem[] = [];
  readonly #starts: readonly number[];

  constructor(text: string) {
    this.#starts = lineStarts(text);
  }

  get #isFull(): boolean {
    return this.problems.length >= mostProblems;
  }

  lineOf(offset: number): number {
    return positionOf(this.#starts, offset).line;
  }

  report(offset: number, length: number, message: string): undefined {
    if (this.#isFull) return undefined;
    const [start, end] = [positionOf(this.#starts, offset), positionOf(this.#starts, offset + length)];
    this.problems.push({ start, end, message });
    return undefined;
  }

  /** The value of a node; nothing, and a problem, where it is none of its kind. */
  value(node: Node, kind: Kind, name: string): Found | undefined {
    const value = this.#plain(node, kind, name);
    return value === undefined ? undefined : { value, at: node.offset };
  }

  #plain(node: Node, kind: Kind, name: string): Plain | undefined {
    switch (kind.is) {
      case "list":
        if (node.type !== "array") return this.#wrong(node, `${name} is a list in [ ].`);
        if ((node.children?.length ?? 0) > mostEntries)
          return this.#wrong(node, `${name} has ${mostEntries} entries at the most.`);
        return (node.children ?? []).flatMap((child) => this.value(child, kind.of, `An entry of ${name}`) ?? []);
      case "object":
        if (node.type !== "object") return this.#wrong(node, `${name} is an object in { }.`);
        return this.#object(node, kind.keys, name);
      case "byCheck":
        if (node.type !== "object")
          return this.#wrong(node, `${name} is an object in { }: the name of a check, and its value.`);
        return this.#byCheck(node, kind.of, name);
      case "count":
        return Number.isInteger(node.value) && node.value >= 0
          ? node.value
          : this.#wrong(node, `${name} is a whole number from 0.`);
      default:
        return this.#text(node, kind, name);
    }
  }

  #text(
    node: Node,
    kind: Exclude<Kind, { is: "list" | "object" | "byCheck" | "count" }>,
    name: string,
  ): string | undefined {
    const text: unknown = node.value;
    if (typeof text !== "string" || text.trim() === "") return this.#wrong(node, `${name} is a text in quotes.`);
    if (kind.is === "level" && !kind.levels.includes(text)) {
      return this.#wrong(
        node,
        `${name} is ${listed(
          kind.levels.map((level) => `"${level}"`),
          "or",
        )}.`,
      );
    }
    if (kind.is === "day" && !isDay(text)) return this.#wrong(node, `${name} is a day, such as "2027-03-31".`);
    return kind.is === "check" ? this.#check(node, text, kind.skippable) : text;
  }

  #check(node: Node, text: string, skippable: boolean): string | undefined {
    if (this.#isFull) return undefined;
    const page = pageOf(text);
    const id = page?.id ?? text;
    if (!page && !families().includes(text)) {
      const near = nearest(text, families()) ?? nearestPages(text)[0]?.id;
      return this.#wrong(
        node,
        `There is no check and no family of checks “${text}”.${near ? ` Did you mean ${near}?` : ""}`,
      );
    }
    if (skippable && isAlwaysShown(id)) {
      return this.#wrong(
        node,
        `“${text}” cannot be left out: what cannot be read, or failed to run, would pass for sound.`,
      );
    }
    return id;
  }

  #object(node: Node, known: Keys, name: string): ReadonlyMap<string, Found> | undefined {
    const found = new Map<string, Found>();
    const seen = new Set<string>();
    let isWhole = true;
    for (const { key, keyNode, value } of membersOf(node)) {
      const row = Object.hasOwn(known, key) ? known[key] : undefined;
      if (seen.has(key)) this.#wrong(keyNode, `“${key}” stands here twice; the first of them holds.`);
      else if (!row) this.#unknown(keyNode, key, known);
      else if (value) {
        const read = this.value(value, row.kind, `“${key}”`);
        if (read) found.set(key, read);
        else isWhole = false;
      }
      seen.add(key);
    }
    for (const [key, { required }] of Object.entries(known)) {
      if (required && !seen.has(key)) {
        isWhole = false;
        this.#wrong(node, `${name} needs “${key}”.`);
      }
    }
    // A suppression that is half understood might suppress more than was meant.
    return isWhole || known === keys ? found : undefined;
  }

  #byCheck(node: Node, kind: Kind, name: string): ReadonlyMap<string, Found> {
    const found = new Map<string, Found>();
    for (const { key, keyNode, value } of membersOf(node)) {
      const id = this.#check(keyNode, key, false);
      const read = value && this.value(value, kind, `“${key}” in ${name}`);
      if (id !== undefined && read) found.set(id, read);
    }
    return found;
  }

  #unknown(node: Node, key: string, known: Keys): void {
    if (this.#isFull) return;
    const near = nearest(key, Object.keys(known));
    const hint = near ? `Did you mean “${near}”?` : `There are ${listed(Object.keys(known), "and")}.`;
    this.#wrong(node, `There is no setting “${key}”. ${hint}`);
  }

  #wrong(node: Node, message: string): undefined {
    return this.report(node.offset, node.length, message);
  }
}

interface Member {
  readonly key: string;
  readonly keyNode: Node;
  readonly value: Node | undefined;
}

const membersOf = (node: Node): Member[] =>
  (node.children ?? []).flatMap(({ children: [keyNode, value] = [] }) =>
    keyNode ? [{ key: String(keyNode.value), keyNode, value }] : [],
  );

const families = (): readonly string[] => [...new Set(pages.map(({ id }) => familyOf(id)))];

function settingsOf(root: Found | undefined, reader: Reader): Settings {
  const members = membersIn(root);
  const raised = [...membersIn(members.get("raise"))].flatMap(([check, found]) => {
    const severity = severityOf(found);
    return severity ? [[check, severity] as const] : [];
  });
  const maxWarnings = members.get("maxWarnings")?.value;
  return {
    failLevel: severityOf(members.get("failLevel")),
    maxWarnings: typeof maxWarnings === "number" ? maxWarnings : undefined,
    only: textsOf(members.get("only")),
    skip: textsOf(members.get("skip")) ?? [],
    leaveOut: textsOf(members.get("leaveOut")) ?? [],
    columns: textsOf(members.get("columns")) ?? [],
    suppress: entriesOf(members.get("suppress")).map((one) => suppressionOf(one, reader)),
    raise: new Map(raised),
    lines: new Map([...members].map(([key, { at }]) => [key, reader.lineOf(at)])),
  };
}

function suppressionOf(one: Found, reader: Reader): Suppression {
  const members = membersIn(one);
  return {
    check: textOf(members.get("check")) ?? "",
    reason: textOf(members.get("reason")) ?? "",
    files: textsOf(members.get("files")),
    until: textOf(members.get("until")),
    at: one.at,
    line: reader.lineOf(one.at),
  };
}

const isMembers = (value: Plain | undefined): value is ReadonlyMap<string, Found> => value instanceof Map;

const membersIn = (found: Found | undefined): ReadonlyMap<string, Found> =>
  isMembers(found?.value) ? found.value : new Map();

const isEntries = (value: Plain | undefined): value is readonly Found[] => Array.isArray(value);

const entriesOf = (found: Found | undefined): readonly Found[] => (isEntries(found?.value) ? found.value : []);

const textOf = (found: Found | undefined): string | undefined =>
  typeof found?.value === "string" ? found.value : undefined;

const textsOf = (found: Found | undefined): readonly string[] | undefined =>
  found && entriesOf(found).flatMap((one) => textOf(one) ?? []);

function severityOf(found: Found | undefined): Severity | undefined {
  const value = found?.value;
  return isOneOf(severities, value) ? value : undefined;
}
