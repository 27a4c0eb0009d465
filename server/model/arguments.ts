import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Accepts, Choices, Param, WordRow } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { unitOf } from "../../grammar/units.ts";
import { type Provenance, provenances } from "../../grammar/vocabulary.ts";
import { meantBy, saidFor } from "./meant.ts";
import type { Fix, LanguageCheck, Problem } from "./problems.ts";
import { capital, readAs, readWritten, unitFixes } from "./quantity.ts";
import type { Absent, AnyValue, Leg, Path, Val } from "./values.ts";

/** What a statement's tokens say, by the names of the row's parameters. */
export interface BoundArguments {
  readonly args: Record<string, AnyValue | AnyValue[]>;
  readonly provenance: Provenance;
  readonly record?: string;
  readonly problems: readonly Problem[];
}

/**
 * Matches tokens to parameters by what they are rather than by their order: a standard can only be the standard, a
 * kiloampere figure only the breaking capacity. A token that nothing takes is a problem and is passed over.
 */
export function bindArguments(word: IToken, row: WordRow, tokens: readonly IToken[]): BoundArguments {
  return new ArgumentBinder(word, row, tokens).bind();
}

type Slot = readonly [name: string, param: Param];

/** A row's parameters sorted by what a token asks of them, once for each row. */
interface RowShape {
  readonly slots: readonly Slot[];
  readonly plain: readonly Slot[];
  readonly labelled: ReadonlyMap<string, Slot>;
  readonly hasReading: boolean;
  readonly quantities: ReadonlySet<QuantityName>;
}

const shapes = new WeakMap<WordRow, RowShape>();

function shapeOf(row: WordRow): RowShape {
  const before = shapes.get(row);
  if (before) return before;
  const slots: readonly Slot[] = Object.entries(row.params);
  const accepted = slots.map(([, { accepts }]) => accepts);
  const shape: RowShape = {
    slots,
    plain: slots.filter(([, param]) => param.label === undefined),
    labelled: new Map(slots.flatMap((slot) => (slot[1].label === undefined ? [] : [[slot[1].label, slot]]))),
    hasReading: accepted.some(isReading),
    quantities: new Set(accepted.flatMap((accepts) => (accepts.kind === "quantity" ? [accepts.of] : []))),
  };
  shapes.set(row, shape);
  return shape;
}

class ArgumentBinder {
  readonly #word: IToken;
  readonly #row: WordRow;
  readonly #tokens: readonly IToken[];
  readonly #shape: RowShape;
  readonly #args: Record<string, AnyValue | AnyValue[]> = {};
  readonly #problems: Problem[] = [];
  #provenance: Provenance = "measured";
  #record: string | undefined;
  #at = 0;

  constructor(word: IToken, row: WordRow, tokens: readonly IToken[]) {
    this.#word = word;
    this.#row = row;
    this.#tokens = tokens;
    this.#shape = shapeOf(row);
  }

  bind(): BoundArguments {
    while (this.#at < this.#tokens.length) this.#next();
    if (this.#problems.length === 0) this.#requireAll();
    return {
      args: this.#args,
      provenance: this.#provenance,
      ...(this.#record === undefined ? {} : { record: this.#record }),
      problems: this.#problems,
    };
  }

  #next(): void {
    const token = this.#tokens[this.#at] as IToken;
    const labelled = this.#shape.labelled.get(token.image);
    if (labelled && this.#isFree(labelled)) return this.#labelled(labelled, token);
    if (isWordly(token) && this.#says(token)) return;
    if (token.image === "LIM" || token.image === "N/A") return this.#absent(this.#absentSlots());
    if (!this.#fillPlain(token)) this.#refuse(token);
  }

  /** Exact words of a closed list come before names, so `ring` is never taken for the name of a way. */
  #fillPlain(token: IToken): boolean {
    const { plain } = this.#shape;
    for (const slot of plain) if (says(slot, token) && this.#isFree(slot) && this.#fill(slot)) return true;
    for (const slot of plain) if (this.#isFree(slot) && this.#fill(slot)) return true;
    return false;
  }

  #isFree([name, param]: Slot): boolean {
    return param.many || this.#args[name] === undefined;
  }

  /** Slots that can still take a value. */
  #free(): Slot[] {
    return this.#shape.slots.filter((slot) => this.#isFree(slot));
  }

  #labelled(slot: Slot, label: IToken): void {
    this.#at++;
    const token = this.#tokens[this.#at];
    if (!token) {
      this.#problem("missing-argument", `“${label.image}” is followed by ${slot[1].accepts.help}.`, label, []);
      return;
    }
    if (token.image === "LIM" || token.image === "N/A") return this.#absent([slot]);
    if (!this.#fill(slot)) {
      if (!this.#saidElsewhere(label, token)) this.#refuseFor(slot, token);
    } else if (slot[1].many) while (this.#at < this.#tokens.length && !this.#isLabel() && this.#fill(slot));
  }

  #isLabel(): boolean {
    return this.#shape.labelled.has(this.#tokens[this.#at]?.image ?? "");
  }

  /** Where a reading came from: `calculated`, `from-record "…"`. */
  #says(token: IToken): boolean {
    if (!this.#shape.hasReading || !Object.hasOwn(provenances, token.image)) return false;
    this.#provenance = token.image as Provenance;
    this.#at++;
    const record = this.#tokens[this.#at];
    if (token.image === "from-record") {
      if (record && isToken(record, "Text")) {
        this.#record = textOf(record);
        this.#at++;
      } else
        this.#problem(
          "missing-argument",
          "“from-record” names the record the figure was taken from, in quotes.",
          token,
          [],
        );
    }
    return true;
  }

  #absentSlots(): Slot[] {
    const able = this.#free().filter(([, { accepts }]) => mayBeAbsent(accepts));
    const plain = able.filter(([, param]) => param.label === undefined);
    return plain.length > 0 ? plain.slice(0, 1) : able;
  }

  #absent(slots: readonly Slot[]): void {
    const token = this.#tokens[this.#at] as IToken;
    const able = slots.filter(([, { accepts }]) => mayBeAbsent(accepts));
    if (able.length === 0) {
      this.#at++;
      this.#problem(
        "wrong-argument",
        `“${this.#word.image}” is not something that is measured, so ${token.image} cannot stand here.`,
        token,
        [],
      );
      return;
    }
    this.#at++;
    const reason = this.#tokens[this.#at];
    const why = reason && isToken(reason, "Text") ? textOf(reason) : undefined;
    if (why !== undefined) this.#at++;
    const end = why === undefined || !reason ? endOf(token) : endOf(reason);
    const value: Absent = {
      absent: token.image === "LIM" ? "LIM" : "N/A",
      ...(why === undefined ? {} : { why }),
      start: token.startOffset,
      end,
    };
    for (const slot of able) this.#put(slot, value);
    if (token.image === "LIM" && !why) {
      this.#problem(
        "limitation-without-reason",
        "A limitation needs its reason: what prevented the test, and who agreed.",
        token,
        [{ title: "Add a reason", edits: [{ start: endOf(token), end: endOf(token), text: ' "why"' }], safe: false }],
      );
    }
  }

  #put([name, param]: Slot, value: AnyValue): void {
    const before = this.#args[name];
    if (!param.many) this.#args[name] = value;
    else if (Array.isArray(before)) before.push(value);
    else this.#args[name] = [value];
  }

  /** Takes the token for a slot if it can be one; true if it was used up, also by a problem. */
  #fill(slot: Slot): boolean {
    const token = this.#tokens[this.#at] as IToken;
    const { accepts } = slot[1];
    switch (accepts.kind) {
      case "quantity":
        return this.#fillQuantity(slot, accepts.of, token);
      case "choice":
        return Object.hasOwn(accepts.choices, token.image) && this.#take(slot, valOf(token, token.image));
      case "define":
      case "ref":
        return isName(token) && this.#take(slot, valOf(token, token.image));
      case "text":
        return isToken(token, "Text") && this.#take(slot, valOf(token, textOf(token)));
      case "date":
        return isToken(token, "Date") && this.#fillDate(slot, token);
      case "standard":
        return isToken(token, "Standard") && this.#take(slot, valOf(token, normalStandard(token.image)));
      case "shorthand":
        return this.#fillShorthand(slot, token);
      case "count":
        return (
          isToken(token, "Number") && /^\d+$/.test(token.image) && this.#take(slot, valOf(token, Number(token.image)))
        );
      case "multiple":
        return (
          isToken(token, "Multiple") &&
          this.#take(slot, valOf(token, token.image.startsWith("½") ? 0.5 : Number.parseFloat(token.image)))
        );
      case "rule":
        return (
          (isToken(token, "Clause") ||
            isToken(token, "Number") ||
            isToken(token, "NumberWord") ||
            isToken(token, "Word")) &&
          this.#take(slot, valOf(token, token.image))
        );
      case "path":
        return this.#fillPath(slot);
    }
  }

  #take(slot: Slot, value: AnyValue): true {
    this.#put(slot, value);
    this.#at++;
    return true;
  }

  #fillQuantity(slot: Slot, of: QuantityName, token: IToken): boolean {
    if (!isToken(token, "Quantity")) return false;
    const written = readWritten(token.image, token.startOffset);
    if (!written) return false;
    const others = this.#shape.quantities.size > (this.#shape.quantities.has(of) ? 1 : 0);
    const kind: { readonly units: readonly string[] } = quantities[of];
    if (slot[1].label === undefined && others && !kind.units.includes(written.unit)) return false;
    const read = readAs(written, of);
    if ("quantity" in read) return this.#take(slot, read.quantity);
    this.#problems.push(read.problem);
    this.#at++;
    return true;
  }

  #fillDate(slot: Slot, token: IToken): true {
    const date = new Date(`${token.image}T00:00:00Z`);
    if (!Number.isNaN(date.getTime()) && date.toISOString().startsWith(token.image))
      return this.#take(slot, valOf(token, token.image));
    this.#at++;
    this.#problem("not-a-date", `${token.image} is not a day in any calendar.`, token, []);
    return true;
  }

  #fillShorthand(slot: Slot, token: IToken): boolean {
    const match = /^([BCD])(\d+)$/.exec(token.image);
    if (!match) return false;
    const curve = match[1] as "B" | "C" | "D";
    return this.#take(slot, { curve, rating: Number(match[2]), start: token.startOffset, end: endOf(token) });
  }

  #fillPath(slot: Slot): boolean {
    const first = this.#tokens[this.#at] as IToken;
    if (!isName(first)) return false;
    const legs: Leg[] = [];
    this.#at++;
    while (this.#at < this.#tokens.length) {
      const length = this.#tokens[this.#at] as IToken;
      const to = this.#tokens[this.#at + 1];
      const written = isToken(length, "Quantity") ? readWritten(length.image, length.startOffset) : undefined;
      if (!written) {
        this.#at = this.#tokens.length;
        const number = isToken(length, "Number");
        this.#problem(
          number ? "missing-unit" : "wrong-argument",
          "A run goes from place to place with a length between: A 7 m S1 6 m S2.",
          length,
          number
            ? [
                {
                  title: `Write ${length.image} m`,
                  edits: [{ start: endOf(length), end: endOf(length), text: " m" }],
                  safe: false,
                },
              ]
            : [],
        );
        return true;
      }
      const read = readAs(written, "length");
      if ("problem" in read) {
        this.#at = this.#tokens.length;
        this.#problems.push(read.problem);
        return true;
      }
      if (!to || !isName(to)) {
        this.#at = this.#tokens.length;
        this.#problem(
          "missing-argument",
          `The run does not say where it goes after ${length.image}.`,
          to ?? length,
          [],
        );
        return true;
      }
      legs.push({ length: read.quantity, to: valOf(to, to.image) });
      this.#at += 2;
    }
    if (legs.length === 0) {
      this.#problem(
        "missing-argument",
        "A run goes from place to place with a length between: A 7 m S1 6 m S2.",
        first,
        [],
      );
      return true;
    }
    const path: Path = {
      from: valOf(first, first.image),
      legs,
      start: first.startOffset,
      end: legs.at(-1)?.to.end ?? endOf(first),
    };
    this.#put(slot, path);
    return true;
  }

  /** Nothing takes the token: says what it looks like, what belongs here, and how to put it right. */
  #refuse(token: IToken): void {
    const quantitySlot = this.#free().find(
      ([, { accepts, label }]) => accepts.kind === "quantity" && label === undefined,
    );
    const free = this.#free().filter(([, param]) => param.label === undefined);
    const said = isToken(token, "Word") || isToken(token, "NumberWord") || (isToken(token, "Number") && !quantitySlot);
    const slot =
      (isNumberLike(token) ? quantitySlot : undefined) ??
      (said ? free.find(([, { accepts }]) => accepts.kind === "choice") : undefined);
    if (slot) return this.#refuseFor(slot, token);
    if (isToken(token, "Stray") || isToken(token, "OpenText")) return this.#stop();
    const filled = this.#shape.plain.find((filled) => !this.#isFree(filled) && couldBe(filled[1].accepts, token));
    if (filled) return this.#second(filled, token);
    this.#at++;
    const wanted = this.#free().map(([, param]) =>
      param.label ? `“${param.label}” with ${param.accepts.help}` : param.accepts.help,
    );
    const rest = wanted.length === 0 ? "nothing more" : `no such thing here, only ${list(wanted)}`;
    this.#problem(
      "wrong-argument",
      `“${this.#word.image}” takes ${rest}; “${token.image}” does not belong.`,
      token,
      [],
    );
  }

  /** A second value where the line has one of its kind already: the rest of the line belongs to it. */
  #second([, { accepts }]: Slot, token: IToken): void {
    this.#at = this.#tokens.length;
    const remedy =
      this.#row.times === "often" ? `“${token.image}” stands on a line of its own.` : "only one of the two can stand.";
    this.#problem("wrong-argument", `“${this.#word.image}” has ${accepts.help} already: ${remedy}`, token, []);
  }

  /** The syntax has already spoken of this token: the statement is broken, but one message is enough. */
  #stop(): void {
    this.#at = this.#tokens.length;
    this.#problems.push({ check: "stray", message: "", start: 0, end: 0, fixes: [] });
  }

  #refuseFor(slot: Slot, token: IToken): void {
    this.#at++;
    const { accepts } = slot[1];
    if (isToken(token, "Stray") || isToken(token, "OpenText")) return this.#stop();
    if (isToken(token, "Slip")) return this.#slip(token);
    if (isToken(token, "Endless")) {
      return this.#problem(
        "off-scale-sign",
        `“${token.image.trim()}” loses the range. Write > and the top of the instrument's range, such as >999 MΩ.`,
        token,
        [],
      );
    }
    if (accepts.kind === "quantity") return this.#needsQuantity(accepts.of, token);
    if (accepts.kind === "choice" && !isToken(token, "Quantity"))
      return this.#unknownChoice(accepts.choices, accepts.help, token);
    this.#problem("wrong-argument", `“${token.image}” stands where ${accepts.help} belongs.`, token, []);
  }

  #slip(token: IToken): void {
    const image = token.image
      .replace(/[oO](?=[.\d])/g, "0")
      .replace(/(^|[<>\s-])\./, "$10.")
      .replace(/0[oO]/g, "00");
    const text = image.replace(",", ".");
    this.#problem("number-slip", `“${token.image}” is not a number: a decimal point is written 0.45.`, token, [
      { title: `Write ${text}`, edits: [{ start: token.startOffset, end: endOf(token), text }], safe: false },
    ]);
  }

  #needsQuantity(of: QuantityName, token: IToken): void {
    const kind = quantities[of];
    if (isToken(token, "Number")) {
      const written = readWritten(token.image, token.startOffset);
      const fixes = written ? unitFixes(written, kind) : [];
      return this.#problem(
        "missing-unit",
        `${token.image} lacks its unit: ${kind.what} is written in ${kind.units.join(" or ")}.`,
        token,
        fixes,
      );
    }
    const match = isToken(token, "NumberWord") ? /^([<>]?[ \t]?\d+(?:\.\d+)?)([A-Za-zµΩ].*)$/.exec(token.image) : null;
    if (match && !unitOf(match[2] ?? "")) {
      return this.#problem(
        "wrong-unit",
        `“${match[2]}” is not a unit: ${kind.what} is written in ${kind.units.join(" or ")}.`,
        token,
        kind.units.map((unit) => ({
          title: `Write ${match[1]} ${unit}`,
          edits: [{ start: token.startOffset, end: endOf(token), text: `${match[1]} ${unit}` }],
          safe: false,
        })),
      );
    }
    this.#problem(
      "wrong-argument",
      `“${token.image}” stands where ${kind.what} belongs, such as a figure in ${kind.units[0]}.`,
      token,
      [],
    );
  }

  #unknownChoice(choices: Choices, help: string, token: IToken): void {
    const words = Object.keys(choices);
    const near = meantBy(token.image, words);
    const shown = words.length > 12 ? `${words.slice(0, 12).join(", ")} and others` : list(words, "or");
    this.#problem(
      "wrong-argument",
      `“${token.image}” does not say ${help}: ${near ? `did you mean “${near}”?` : `it is ${shown}.`}`,
      token,
      near ? [replaceFix(token, near)] : [],
    );
  }

  #requireAll(): void {
    const missing = this.#shape.slots.filter(([name, param]) => !param.optional && this.#args[name] === undefined);
    if (missing.length === 0) return;
    const wanted = missing.map(([, param]) =>
      param.label ? `“${param.label}” and ${param.accepts.help}` : param.accepts.help,
    );
    this.#problem("missing-argument", `“${this.#word.image}” needs ${list(wanted)}.`, this.#word, []);
  }

  /** What is said after a label on site but stands alone here: a `type S` RCD is one that is `delayed`. */
  #saidElsewhere(label: IToken, token: IToken): boolean {
    for (const [, { accepts }] of this.#free()) {
      const ours = accepts.kind === "choice" ? saidFor(token.image, Object.keys(accepts.choices)) : undefined;
      if (ours === undefined) continue;
      this.#at++;
      const whole = { start: label.startOffset, end: endOf(token) };
      const fixes = [{ title: `Write ${ours}`, edits: [{ ...whole, text: ours }], safe: false }];
      this.#problems.push({
        check: "wrong-argument",
        message: `“${label.image} ${token.image}” is written “${ours}”.`,
        ...whole,
        fixes,
      });
      return true;
    }
    return false;
  }

  #problem(check: LanguageCheck, message: string, token: IToken, fixes: readonly Fix[]): void {
    this.#problems.push({ check, message: capital(message), start: token.startOffset, end: endOf(token), fixes });
  }
}

/** Whether the token is one of a choice's own words. */
const says = ([, { accepts }]: Slot, token: IToken): boolean =>
  accepts.kind === "choice" && Object.hasOwn(accepts.choices, token.image);

/** Whether the token is of the kind an argument is, so that it would have been taken were there none yet. */
function couldBe(accepts: Accepts, token: IToken): boolean {
  if (accepts.kind === "multiple") return isToken(token, "Multiple");
  if (accepts.kind !== "quantity" || !isToken(token, "Quantity")) return false;
  const written = readWritten(token.image, token.startOffset);
  return written !== undefined && "quantity" in readAs(written, accepts.of);
}

const isReading = (accepts: Accepts): boolean => accepts.kind === "quantity" && accepts.reading;
const mayBeAbsent = (accepts: Accepts): boolean => isReading(accepts) || (accepts.kind === "choice" && accepts.absent);
const isWordly = (token: IToken): boolean => isToken(token, "Word");
const isName = (token: IToken): boolean =>
  isToken(token, "Word") || isToken(token, "NumberWord") || (isToken(token, "Number") && /^\d/.test(token.image));
const isNumberLike = (token: IToken): boolean =>
  ["Number", "NumberWord", "Quantity", "Slip", "Endless", "Multiple"].includes(token.tokenType.name);
const valOf = <T>(token: IToken, value: T): Val<T> => ({ value, start: token.startOffset, end: endOf(token) });

/** The words of a text, without its quotes. */
const textOf = (token: IToken): string => token.image.slice(1, -1).replace(/\\(["\\])/g, "$1");

/** One spelling for a standard: single blanks, none round a plus. */
export const normalStandard = (image: string): string =>
  image
    .replace(/[ \t]+/g, " ")
    .replace(/ ?\+ ?/g, "+")
    .replace(/^([A-Z]+(?: [A-Z]+)*)(?=\d)/, "$1 ");

export const replaceFix = (token: IToken, text: string): Fix => ({
  title: `Write ${text}`,
  edits: [{ start: token.startOffset, end: endOf(token), text }],
  safe: false,
});

function list(words: readonly string[], last = "and"): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}
