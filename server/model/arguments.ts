import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Accepts, WordRow } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { asInTable, corrections, type Provenance, provenances } from "../../grammar/vocabulary.ts";
import { isDay } from "../text/days.ts";
import { capital, listed } from "../text/words.ts";
import { asFigure } from "./bound.ts";
import type { LineBeingRead, Slip, SlipReader } from "./line.ts";
import { lostLineEnd } from "./lost-line-end.ts";
import { figureTakenForName, meansNoName, multipleTurned } from "./not-a-name.ts";
import { readPath } from "./path.ts";
import { breakerType, printedLabel, typeWithoutResidual } from "./printed-label.ts";
import type { Fix, LanguageCheck, Problem } from "./problems.ts";
import { readAs, readWritten } from "./quantity.ts";
import {
  choiceProblem,
  endlessProblem,
  problemAt,
  quantityProblem,
  signsBeside,
  slipProblem,
  spanOf,
  writeFix,
} from "./refusals.ts";
import { readRoughTime, yearForDay } from "./rough-time.ts";
import { couldBe, mayBeAbsent, type RowShape, type Slot, says, shapeOf } from "./row-shape.ts";
import { filler, labelMissing, labelRespelt, ownNameAgain, phrase, spokenAbsence } from "./site-phrases.ts";
import { spokenCable } from "./spoken-cable.ts";
import { spokenDay } from "./spoken-day.ts";
import { rampOnTimeLine, residualNamed, spokenProvenance, surgeType, tickForFigure } from "./spoken-result.ts";
import { spokenStandard } from "./spoken-standard.ts";
import { strangeUnit } from "./strange-unit.ts";
import { suggestionFor, wordForSiteTerm } from "./suggestions.ts";
import { isName, isNumberLike, nameOf, normalStandard, textOf, valOf } from "./token-values.ts";
import { saidInAnother } from "./unknown-word.ts";
import { unlabelled } from "./unlabelled.ts";
import { quoted, unquoted } from "./unquoted.ts";
import type { Absent, AnyValue, Correction } from "./values.ts";

/** What a statement's tokens say, by the names of the row's parameters. */
export interface BoundArguments {
  readonly args: Record<string, AnyValue | AnyValue[]>;
  readonly provenance: Provenance;
  readonly record?: string;
  readonly corrections: readonly Correction[];
  readonly problems: readonly Problem[];
}

/**
 * Matches tokens to parameters by what they are rather than by their order: a standard can only be the standard, a
 * kiloampere figure only the breaking capacity. A token that nothing takes is a problem and is passed over.
 */
export function bindArguments(word: IToken, row: WordRow, tokens: readonly IToken[]): BoundArguments {
  return new ArgumentBinder(word, row, tokens).bind();
}

/** Slips of the pen that have an answer of their own, the likeliest reading of a token first. */
const slips: readonly SlipReader[] = [
  multipleTurned,
  spokenAbsence,
  spokenProvenance,
  tickForFigure,
  rampOnTimeLine,
  surgeType,
  spokenDay,
  yearForDay,
  printedLabel,
  spokenStandard,
  residualNamed,
  phrase,
  spokenCable,
  ownNameAgain,
  filler,
  labelMissing,
  labelRespelt,
  unlabelled,
  unquoted,
  lostLineEnd,
];

/** What has been reported where the signs of the line were read. */
const reported: Problem = { check: "stray", message: "", start: 0, end: 0, fixes: [] };

/** More than these are read no faster than an example. */
const mostListed = 2;

/** Of more words than these none is offered by itself. */
const mostOffered = 4;

class ArgumentBinder implements LineBeingRead {
  readonly word: IToken;
  readonly row: WordRow;
  readonly tokens: readonly IToken[];
  readonly shape: RowShape;
  readonly args: Record<string, AnyValue | AnyValue[]> = {};
  readonly #problems: Problem[] = [];
  #provenance: Provenance = "measured";
  #record: string | undefined;
  readonly #corrections: Correction[] = [];
  at = 0;

  constructor(word: IToken, row: WordRow, tokens: readonly IToken[]) {
    this.word = word;
    this.row = row;
    this.tokens = tokens;
    this.shape = shapeOf(row);
  }

  bind(): BoundArguments {
    while (this.at < this.tokens.length) this.#next();
    if (this.#problems.length === 0) this.#requireAll();
    const alone = this.#problems.length === 0 && typeWithoutResidual(this);
    if (alone) this.#problems.push(alone);
    return {
      args: this.args,
      provenance: this.#provenance,
      ...(this.#record === undefined ? {} : { record: this.#record }),
      corrections: this.#corrections,
      problems: this.#problems,
    };
  }

  #next(): void {
    const token = this.tokens[this.at] as IToken;
    if (isToken(token, "Stray") && signsBeside.test(token.image)) return this.#passOver();
    const labelled = this.shape.labelled.get(token.image);
    if (labelled && this.#isFree(labelled)) return this.#labelled(labelled, token);
    if (isToken(token, "Word") && (this.#takeProvenance(token) || this.#takeCorrection(token))) return;
    if (token.image === "LIM" || token.image === "N/A") return this.#absent(this.#absentSlots());
    if (!this.#fillPlain(token)) this.#refuse(token);
  }

  /** Exact words of a closed list come before names, so `ring` is never taken for the name of a way. */
  #fillPlain(token: IToken): boolean {
    const { plain } = this.shape;
    for (const slot of plain) if (says(slot, token) && this.#isFree(slot) && this.#fill(slot)) return true;
    for (const slot of plain) if (this.#isFree(slot) && this.#fill(slot)) return true;
    return false;
  }

  #isFree([name, param]: Slot): boolean {
    return param.many || this.args[name] === undefined;
  }

  /** Slots that can still take a value. */
  free(): Slot[] {
    return this.shape.slots.filter((slot) => this.#isFree(slot));
  }

  #labelled(slot: Slot, label: IToken): void {
    this.at++;
    const token = this.tokens[this.at];
    if (!token) {
      this.#problem("missing-argument", `“${label.image}” is followed by ${slot[1].accepts.help}.`, label);
      return;
    }
    if (token.image === "LIM" || token.image === "N/A") return this.#absent([slot]);
    if (this.#took(breakerType(this, label, token))) return;
    if (!this.#fill(slot)) {
      if (!this.#refuseLabelledForm(label, token)) this.#refuseFor(slot, token);
    } else if (slot[1].many) while (this.at < this.tokens.length && !this.#isLabel() && this.#fill(slot));
  }

  #took(slip: Slip | undefined): boolean {
    if (!slip) return false;
    this.#problems.push(slip.problem);
    this.at = slip.upTo;
    return true;
  }

  #isLabel(): boolean {
    return this.shape.labelled.has(this.tokens[this.at]?.image ?? "");
  }

  /** Where a reading came from: `calculated`, `from-record "…"`. */
  #takeProvenance(token: IToken): boolean {
    if (!this.shape.hasReading || !Object.hasOwn(provenances, token.image)) return false;
    this.#provenance = token.image as Provenance;
    this.at++;
    const record = this.tokens[this.at];
    if (token.image === "from-record") {
      if (record && isToken(record, "Text")) {
        this.#record = textOf(record);
        this.at++;
      } else
        this.#problem(
          "missing-argument",
          "“from-record” names the record the figure was taken from, in quotes.",
          token,
        );
    }
    return true;
  }

  /** `Zs 0.62 Ω was 0.26 Ω "Figures turned round"`: what stood there, and why it does not. */
  #takeCorrection(token: IToken): boolean {
    if (!this.shape.canBeRead || !Object.hasOwn(corrections, token.image)) return false;
    const [before, reason] = this.tokens.slice(this.at + 1, this.at + 3);
    if (!before || !reason || !isToken(reason, "Text") || isToken(before, "Text")) {
      this.at = this.tokens.length;
      const message = "“was” is followed by what stood there before, and by the reason in quotes.";
      this.#problem("missing-argument", message, token);
      return true;
    }
    this.#corrections.push({ was: before.image, why: textOf(reason), start: token.startOffset, end: endOf(reason) });
    this.at += 3;
    return true;
  }

  #absentSlots(): Slot[] {
    const able = this.free().filter(([, { accepts }]) => mayBeAbsent(accepts));
    const plain = able.filter(([, param]) => param.label === undefined);
    return plain.length > 0 ? plain.slice(0, 1) : able;
  }

  #absent(slots: readonly Slot[]): void {
    const token = this.tokens[this.at] as IToken;
    const able = slots.filter(([, { accepts }]) => mayBeAbsent(accepts));
    if (able.length === 0) {
      this.at++;
      const reason = this.tokens[this.at];
      if (reason && isToken(reason, "Text")) this.at++;
      const spoken = this.shape.slots.some(([, { accepts }]) => mayBeAbsent(accepts));
      this.#problem(
        "wrong-argument",
        spoken
          ? `“${this.word.image}” has its result already: ${token.image} cannot be written beside it.`
          : `“${this.word.image}” is not something that is measured, so ${token.image} is not allowed here.`,
        token,
      );
      return;
    }
    this.at++;
    const reason = this.tokens[this.at];
    const why = reason && isToken(reason, "Text") ? textOf(reason) : undefined;
    if (why !== undefined) this.at++;
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
    const before = this.args[name];
    if (!param.many) this.args[name] = value;
    else if (Array.isArray(before)) before.push(value);
    else this.args[name] = [value];
  }

  /** Takes the token for a slot if it can be one; true if it was used up, also by a problem. */
  #fill(slot: Slot): boolean {
    const token = this.tokens[this.at] as IToken;
    const { accepts } = slot[1];
    switch (accepts.kind) {
      case "quantity":
        return this.#fillQuantity(slot, accepts.of, token);
      case "choice":
        return Object.hasOwn(accepts.choices, token.image) && this.#take(slot, valOf(token, asInTable(token.image)));
      case "define":
        return isName(token) && this.#take(slot, nameOf(token));
      case "ref":
        return isName(token) && !meansNoName(this, slot) && this.#take(slot, nameOf(token));
      case "name":
        return isName(token) && this.#take(slot, nameOf(token));
      case "roughTime":
        return this.#fillRoughTime(slot);
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
          // A sign before a number makes it a reading, and no regulation.
          /^[\p{L}\d]/u.test(token.image) &&
          this.#take(slot, valOf(token, token.image))
        );
      case "path":
        return this.#fillPath(slot);
    }
  }

  #take(slot: Slot, value: AnyValue): true {
    this.#put(slot, value);
    this.at++;
    return true;
  }

  #fillQuantity(slot: Slot, of: QuantityName, token: IToken): boolean {
    if (!isToken(token, "Quantity")) return false;
    const written = readWritten(token.image, token.startOffset);
    if (!written) return false;
    const others = this.shape.quantities.size > (this.shape.quantities.has(of) ? 1 : 0);
    const kind: { readonly units: readonly string[] } = quantities[of];
    if (slot[1].label === undefined && others && !kind.units.includes(written.unit)) return false;
    const read = asFigure(slot, readAs(written, of));
    if ("quantity" in read) return this.#take(slot, read.quantity);
    this.#problems.push(read.problem);
    this.at++;
    return true;
  }

  #fillRoughTime(slot: Slot): boolean {
    const rough = readRoughTime(this.tokens, this.at);
    if (!rough) return false;
    this.#put(slot, rough.value);
    this.at += rough.taken;
    return true;
  }

  #fillDate(slot: Slot, token: IToken): true {
    if (isDay(token.image)) return this.#take(slot, valOf(token, token.image));
    this.at++;
    this.#problem("not-a-date", `${token.image} is not a day in any calendar.`, token);
    return true;
  }

  #fillShorthand(slot: Slot, token: IToken): boolean {
    const match = /^([BCD])(\d+)$/.exec(token.image);
    if (!match) return false;
    const curve = match[1] as "B" | "C" | "D";
    return this.#take(slot, { curve, rating: Number(match[2]), start: token.startOffset, end: endOf(token) });
  }

  #fillPath(slot: Slot): boolean {
    const [first, ...rest] = this.tokens.slice(this.at);
    if (!first || !isName(first)) return false;
    const read = readPath(first, rest);
    this.at = this.tokens.length;
    if ("path" in read) this.#put(slot, read.path);
    else this.#problems.push(read.problem);
    return true;
  }

  /** Nothing takes the token: says what it looks like, what belongs here, and how to put it right. */
  #refuse(token: IToken): void {
    const quantitySlot = isToken(token, "Multiple")
      ? undefined
      : this.free().find(([, { accepts, label }]) => accepts.kind === "quantity" && label === undefined);
    const free = this.free().filter(([, param]) => param.label === undefined);
    const said = isToken(token, "Word") || isToken(token, "NumberWord") || (isToken(token, "Number") && !quantitySlot);
    const slot = (isNumberLike(token) ? quantitySlot : undefined) ?? (said ? choiceMeant(free, token) : undefined);
    for (const slip of slips) if (this.#took(slip(this))) return;
    const again = this.shape.plain.find((one) => !this.#isFree(one) && says(one, token));
    // “bonding gas none”: a service by itself, and on site another word.
    const meant = free.some(
      ([, { accepts }]) =>
        accepts.kind === "choice" && wordForSiteTerm(token.image, Object.keys(accepts.choices)) !== undefined,
    );
    if (again && !meant) return this.#second(again, token);
    if (slot) return this.#refuseFor(slot, token);
    if (isToken(token, "Stray") || isToken(token, "OpenText")) return this.#stop();
    const filled = this.shape.plain.find((filled) => !this.#isFree(filled) && couldBe(filled[1].accepts, token));
    if (filled) return this.#second(filled, token);
    const other = isToken(token, "Quantity")
      ? saidInAnother(this.word.image, this.row, ({ params }) =>
          Object.values(params).some(({ accepts }) => couldBe(accepts, token)),
        )
      : undefined;
    // Where nothing more can stand, all that follows is one thing too many.
    this.at = other || this.free().length === 0 ? this.tokens.length : this.at + 1;
    const wanted = this.free().map(([, param]) =>
      param.label ? `“${param.label}” with ${param.accepts.help}` : param.accepts.help,
    );
    const rest = wanted.length === 0 ? "nothing more" : `no such thing here, only ${listed(wanted)}`;
    const message = other
      ? `Here “${this.word.image}” takes no “${token.image}”; that is a line ${other}`
      : wanted.length > mostListed
        ? `“${token.image}” does not belong here. The line is written so: ${this.row.example.split("\n")[0]}`
        : `“${this.word.image}” takes ${rest}; “${token.image}” does not belong.`;
    this.#problem("wrong-argument", message, token);
  }

  /** A second value where the line has one of its kind already: the rest of the line belongs to it. */
  #second([, { accepts }]: Slot, token: IToken): void {
    this.at = this.tokens.length;
    const often = this.row.times === "often";
    const remedy = often ? `“${token.image}” needs a line of its own.` : "delete one of the two.";
    const fixes = often ? this.#ownLine(accepts, token) : [];
    this.#problem("wrong-argument", `“${this.word.image}” has ${accepts.help} already: ${remedy}`, token, fixes);
  }

  /** `rcd 30 mA 1x 24 ms 5x 12 ms`: what stands before the first of its kind is said of both. */
  #ownLine(accepts: Accepts, token: IToken): Fix[] {
    const at = this.tokens.indexOf(token);
    const first = this.tokens.findIndex((one) => couldBe(accepts, one));
    const before = this.tokens[at - 1];
    if (first < 0 || first >= at || !before) return [];
    const head = [this.word, ...this.tokens.slice(0, first)].map(({ image }) => image).join(" ");
    const indent = " ".repeat(Math.max(0, (this.word.startColumn ?? 1) - 1));
    const text = `\n${indent}${head} `;
    return [
      {
        title: `Put ${token.image} on a line of its own`,
        edits: [{ start: endOf(before), end: token.startOffset, text }],
        safe: false,
      },
    ];
  }

  /** The syntax has already spoken of this token: the statement is broken, but one message is enough. */
  #stop(): void {
    this.at = this.tokens.length;
    this.#problems.push(reported);
  }

  /** The same of a sign behind which the line goes on as it should. */
  #passOver(): void {
    this.at++;
    this.#problems.push(reported);
  }

  #refuseFor(slot: Slot, token: IToken): void {
    const { accepts } = slot[1];
    if (
      accepts.kind === "text" &&
      isName(token) &&
      this.#took(quoted(this, `${capital(accepts.help)} is written in quotes`))
    )
      return;
    if (accepts.kind === "quantity" && this.#took(strangeUnit(this, accepts.of))) return;
    this.at++;
    if (isToken(token, "Stray") || isToken(token, "OpenText")) return this.#stop();
    this.#problems.push(refusalOf(accepts, token));
  }

  #requireAll(): void {
    const missing = this.shape.slots.filter(([name, param]) => !param.optional && this.args[name] === undefined);
    if (missing.length === 0) return;
    const bare = figureTakenForName(this, missing);
    if (bare) return void this.#problems.push(bare);
    const wanted = missing.map(([, param]) =>
      param.label ? `“${param.label}” and ${param.accepts.help}` : param.accepts.help,
    );
    const example = this.row.example.split("\n")[0]?.replace(/ ?\{$/, "");
    this.#problem(
      "missing-argument",
      `“${this.word.image}” needs ${listed(wanted)}, as in: ${example}`,
      this.word,
      this.#choicesFor(missing),
    );
  }

  /** Where one word of a short list is all that is missing, and it is no result of a test. */
  #choicesFor([only, ...others]: readonly Slot[]): Fix[] {
    const { accepts, label } = only?.[1] ?? {};
    if (others.length > 0 || label !== undefined || accepts?.kind !== "choice" || accepts.absent) return [];
    const words = Object.keys(accepts.choices);
    const at = endOf(this.word);
    return words.length > mostOffered
      ? []
      : words.map((word) => ({
          title: `Write ${word}`,
          edits: [{ start: at, end: at, text: ` ${word}` }],
          safe: false,
        }));
  }

  /** What is said after a label on site but stands alone here: a `type S` RCD is one that is `delayed`. */
  #refuseLabelledForm(label: IToken, token: IToken): boolean {
    for (const [, { accepts, label: own }] of this.free()) {
      const exact = own !== undefined && accepts.kind === "choice" && Object.hasOwn(accepts.choices, token.image);
      const ours = exact
        ? `${own} ${token.image}`
        : accepts.kind === "choice"
          ? wordForSiteTerm(token.image, Object.keys(accepts.choices))
          : undefined;
      if (ours === undefined) continue;
      this.at++;
      const whole = spanOf(label, token);
      this.#problems.push({
        check: "wrong-argument",
        message: `“${label.image} ${token.image}” is written “${ours}”.`,
        ...whole,
        fixes: [writeFix(ours, whole)],
      });
      return true;
    }
    return false;
  }

  #problem(check: LanguageCheck, message: string, token: IToken, fixes: readonly Fix[] = []): void {
    this.#problems.push(problemAt(check, message, token, fixes));
  }
}

/** Of several closed lists the one that has a word for what is written; else the first. */
function choiceMeant(free: readonly Slot[], { image }: IToken): Slot | undefined {
  const choices = free.filter(([, { accepts }]) => accepts.kind === "choice");
  return (
    choices.find(
      ([, { accepts }]) =>
        accepts.kind === "choice" && suggestionFor(image, Object.keys(accepts.choices)) !== undefined,
    ) ?? choices[0]
  );
}

/** Why a token is not what an argument accepts. */
function refusalOf(accepts: Accepts, token: IToken): Problem {
  if (isToken(token, "Slip")) return slipProblem(token);
  if (isToken(token, "Endless")) return endlessProblem(token);
  if (accepts.kind === "quantity") return quantityProblem(accepts.of, token);
  if (accepts.kind === "choice" && !isToken(token, "Quantity"))
    return choiceProblem(accepts.choices, accepts.help, token);
  return problemAt("wrong-argument", `“${token.image}” is written where ${accepts.help} belongs.`, token);
}
