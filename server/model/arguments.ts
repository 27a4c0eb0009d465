import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { asInTable, corrections, type Provenance, provenances } from "../../grammar/vocabulary.ts";
import { isDay } from "../text/days.ts";
import { refusal } from "./argument-refusals.ts";
import { asFigure } from "./bound.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { missingFrom } from "./missing-arguments.ts";
import { meansNoName } from "./not-a-name.ts";
import { passedOver, refusalBehind } from "./not-accepted.ts";
import { readPath } from "./path.ts";
import { breakerType, ratingTwice, typeWithoutResidual } from "./printed-label.ts";
import type { Fix, LanguageCheck, Problem } from "./problems.ts";
import { readAs, readWritten } from "./quantity.ts";
import { problemAt, signsBeside } from "./refusals.ts";
import { readRoughTime } from "./rough-time.ts";
import { mayBeAbsent, type RowShape, type Slot, says, shapeOf } from "./row-shape.ts";
import { isNoItem } from "./spoken-items.ts";
import { isName, nameOf, normalStandard, textOf, valOf } from "./token-values.ts";
import { quoted } from "./unquoted.ts";
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

/** What stands behind a new LIM until somebody writes why: it is no reason. */
const whyToWrite = "why";

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

  get token(): IToken {
    return this.tokens[this.at] as IToken;
  }

  bind(): BoundArguments {
    while (this.at < this.tokens.length) this.#next();
    const missing = this.#problems.length === 0 && this.#mayLack && missingFrom(this);
    if (missing) this.#problems.push(missing);
    const alone = this.#problems.length === 0 && (typeWithoutResidual(this) ?? ratingTwice(this));
    if (alone) this.#problems.push(alone);
    return {
      args: this.args,
      provenance: this.#provenance,
      ...(this.#record === undefined ? {} : { record: this.#record }),
      corrections: this.#corrections,
      problems: this.#problems,
    };
  }

  /** Nearly no line lacks anything: what words it is not loaded before one may. */
  get #mayLack(): boolean {
    const { power, current } = this.args;
    if (this.row.figures === "load" && this.row.params.power && !power && !current) return true;
    return this.shape.slots.some(([name, { optional }]) => !optional && this.args[name] === undefined);
  }

  #next(): void {
    const { token } = this;
    if (isToken(token, "Stray") && signsBeside.test(token.image)) {
      this.#report(passedOver(this));
      return;
    }
    const labelled = this.shape.labelled.get(token.image);
    if (labelled && this.#isFree(labelled)) return this.#labelled(labelled, token);
    if (isToken(token, "Word") && (this.#takeProvenance(token) || this.#takeCorrection(token))) return;
    if (token.image === "LIM" || token.image === "N/A") return this.#absent(this.#absentSlots());
    if (!this.#fillPlain(token)) this.#report(refusal(this));
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
      const { accepts } = slot[1];
      const wanted =
        accepts.kind === "quantity"
          ? `${quantities[accepts.of].what} in ${quantities[accepts.of].units.join(" or ")}`
          : accepts.help;
      this.#problem("missing-argument", `“${label.image}” is followed by ${wanted}.`, label);
      return;
    }
    if (token.image === "LIM" || token.image === "N/A") return this.#absent([slot]);
    const printed = breakerType(this, label, token);
    if (printed) this.#report(printed);
    else if (!this.#fill(slot)) this.#report(refusalBehind(this, slot, label));
    else if (slot[1].many) while (this.at < this.tokens.length && !this.#isLabel() && this.#fill(slot));
  }

  #report({ problem, upTo }: Slip): void {
    this.#problems.push(problem);
    this.at = upTo;
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
    const { token } = this;
    const able = slots.filter(([, { accepts }]) => mayBeAbsent(accepts));
    this.at++;
    if (able.length === 0) return this.#neverAbsent(token);
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
    if (token.image === "LIM" && reason && why === undefined && isName(reason) && this.#isUnquotedReason(reason)) {
      const slip = quoted(this, "The reason for a limitation is written in quotes");
      if (slip) this.#report(slip);
      return;
    }
    if (token.image === "LIM" && (!why || why === whyToWrite)) {
      const add = { start: endOf(token), end: endOf(token), text: ` "${whyToWrite}"` };
      this.#problem(
        "limitation-without-reason",
        "A limitation needs its reason: what prevented the test, and who agreed.",
        token,
        why === undefined ? [{ title: "Add a reason", edits: [add], safe: false }] : [],
      );
    }
  }

  #neverAbsent(token: IToken): void {
    const reason = this.tokens[this.at];
    if (reason && isToken(reason, "Text")) this.at++;
    const isMeasured = this.shape.slots.some(([, { accepts }]) => mayBeAbsent(accepts));
    const message = isMeasured
      ? `“${this.word.image}” has its result already: ${token.image} cannot be written beside it.`
      : `“${this.word.image}” is not something that is measured, so ${token.image} is not allowed here.`;
    this.#problem("wrong-argument", message, token);
  }

  /** Whether the word is none that the line has another use for: `LIM no access`. */
  #isUnquotedReason(token: IToken): boolean {
    if (Object.hasOwn(provenances, token.image) || Object.hasOwn(corrections, token.image)) return false;
    return !this.shape.labelled.has(token.image) && !this.shape.plain.some((slot) => says(slot, token));
  }

  #put([name, param]: Slot, value: AnyValue): void {
    const before = this.args[name];
    if (!param.many) this.args[name] = value;
    else if (Array.isArray(before)) before.push(value);
    else this.args[name] = [value];
  }

  /** Takes the token for a slot if it can be one; true if it was used up, also by a problem. */
  #fill(slot: Slot): boolean {
    const { token } = this;
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
        return isToken(token, "Number") && /^\d+$/.test(token.image) && this.#fillNumber(slot, token);
      case "multiple":
        return isToken(token, "Multiple") && this.#fillNumber(slot, token);
      case "rule":
        return (
          (isToken(token, "Clause") ||
            isToken(token, "Number") ||
            isToken(token, "NumberWord") ||
            isToken(token, "Word")) &&
          // A sign before a number makes it a reading, and no regulation.
          /^[\p{L}\d]/u.test(token.image) &&
          !isNoItem(slot, token) &&
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
    const rating = Number(match[2]);
    if (rating > quantities.current.most) return this.#implausible(token);
    return this.#take(slot, { curve, rating, start: token.startOffset, end: endOf(token) });
  }

  #fillNumber(slot: Slot, token: IToken): true {
    const value = token.image.startsWith("½") ? 0.5 : Number.parseFloat(token.image);
    return value > Number.MAX_SAFE_INTEGER ? this.#implausible(token) : this.#take(slot, valOf(token, value));
  }

  /** A figure beyond what it could be, or beyond what can be counted at all, is a slip and no value. */
  #implausible(token: IToken): true {
    this.at++;
    this.#problem("implausible", `${token.image} cannot be right here. Check its digits.`, token);
    return true;
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

  #problem(check: LanguageCheck, message: string, token: IToken, fixes: readonly Fix[] = []): void {
    this.#problems.push(problemAt(check, message, token, fixes));
  }
}
