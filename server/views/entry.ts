/**
 * One reading written into the text it belongs to: into the block of its day, or a new block at the end of its way.
 * What is there already is never overwritten in silence.
 */

import { endOf } from "../../grammar/lexer.ts";
import { type Block, parse, type Statement } from "../../grammar/parser.ts";
import { milliamps, plain } from "../calc/result.ts";
import { isOwnRcd } from "../circuit/rcds.ts";
import type { WayStudy } from "../circuit/way.ts";
import { inColumn } from "../format/column.ts";
import { bindSegment } from "../model/bind.ts";
import { insulationLimit } from "../readings/insulation.ts";
import type { PlannedTest } from "../readings/planned.ts";
import { isDay } from "../text/days.ts";
import type { TextEdit } from "../text/lines.ts";
import { cellsOfWay, columnOf, type GridColumn, joinedKey } from "./grid.ts";

export interface Entry {
  readonly column: string;
  /** The point of a ring, where it is read at one. */
  readonly point?: string | undefined;
  /** What was typed: a figure, a bound, one of the column's words, or LIM or N/A with its reason. */
  readonly text: string;
  /** The day of the tests, as `2026-03-05`. */
  readonly day: string;
  readonly instrument?: string | undefined;
  /** Why a reading of that day is another than what stands there. */
  readonly why?: string | undefined;
  /** What stands there and was entered a moment ago by the same person: it may be typed anew. */
  readonly draft?: string | undefined;
}

export type Written =
  /** In the segment of the way. */
  | { readonly edit: TextEdit; readonly value: string }
  /** What stands there already. The page asks why it is to be another. */
  | { readonly stands: string }
  | { readonly problem: string };

/** Where and how a reading is written: its word, what stands before it, its label. */
interface Form {
  readonly word: string;
  readonly before: string;
  readonly label: string;
  /** The label of the reading that is shown, where that is of one of three lines. */
  readonly shown?: string;
  /** What stands behind the value where the line is new. */
  readonly behind?: string;
}

const problem = (words: string): Written => ({ problem: words });

export function written(study: WayStudy, entry: Entry): Written {
  const column = columnOf(entry.column);
  const cell = cellsOfWay(study).find(
    ({ column: key, test }) => key === entry.column && (test.point ?? undefined) === entry.point,
  );
  if (!column || !cell) return problem(`Way ${study.way.id} has no such reading.`);
  if (!isDay(entry.day)) return problem("Write the day of the tests as in 2026-03-05.");
  const value = valueText(column, entry.text);
  if ("problem" in value) return value;
  const form = formOf(study, column, cell.test);
  const { segment, header } = study.way;
  const way = parse(segment.text, segment.mends).statements.find(({ start }) => start === header.start);
  const close = way?.block?.close;
  if (!way?.block || !close) return problem(`Way ${study.way.id} is not closed yet: end it with } first.`);
  const reading: Reading = { form, value: value.text, entry, kind: column.live ? "live" : "dead" };
  const result = place(segment.text, way.block, reading);
  return "edit" in result ? checked(study, result) : result;
}

/** What was typed as the language has it. */
export function valueText(
  { unit, words, title }: GridColumn,
  typed: string,
): { readonly text: string } | { readonly problem: string } {
  const text = typed.trim();
  const absent = /^(LIM|N\/A)\b\s*"?([^"\r\n]*?)"?$/i.exec(text);
  if (absent) {
    const [, sign = "", why = ""] = absent;
    return { text: `${sign.toUpperCase()}${why === "" ? "" : ` "${why}"`}` };
  }
  if (unit === "") {
    const meant =
      words.find((word) => word === text.toLowerCase()) ??
      words.find((word) => text !== "" && word.startsWith(text.toLowerCase()));
    return meant ? { text: meant } : { problem: `${title}: write ${words.join(" or ")}, or LIM with the reason.` };
  }
  if (/^[<>]?\s*\d+,\d+/.test(text)) return { problem: `Write a point for the decimals: ${text.replace(",", ".")}.` };
  const figure = /^([<>]?)\s*(\d+(?:\.\d+)?|\.\d+)\s*(\S*)$/.exec(text);
  if (!figure)
    return { problem: `${title}: write a figure such as ${unit === "MΩ" ? ">999" : "0.31"}, or LIM with the reason.` };
  const [, sign, digits = "", given = ""] = figure;
  return { text: `${sign}${digits.startsWith(".") ? `0${digits}` : digits} ${given === "" ? unit : given}` };
}

function formOf(study: WayStudy, { key }: GridColumn, { point, name }: PlannedTest): Form {
  if (point !== undefined) return { word: "at", before: point, label: key.replace("at ", "") };
  switch (key) {
    case "r1":
    case "rn":
    case "r2":
      return { word: "ends", before: "", label: key };
    case "L-L":
    case "L-N":
    case "L-E":
    case "N-E":
      return { ...insulationForm(study, key), shown: name };
    case joinedKey:
      return { ...insulationForm(study, "L-E"), behind: "joined" };
    case "RCD ½×":
    case "RCD 1×":
    case "RCD 5×": {
      const rating = study.rcds.find(isOwnRcd)?.sensitivity;
      const multiple = { "RCD ½×": "0.5x", "RCD 1×": "1x", "RCD 5×": "5x" }[key];
      return {
        word: "rcd",
        before: [...(rating === undefined ? [] : [milliamps(rating)]), multiple].join(" "),
        label: "",
      };
    }
    case "button":
      return { word: "test-button", before: "", label: "" };
    case "AFDD button":
      return { word: "afdd-button", before: "", label: "" };
    case "sequence":
      return { word: "phase-sequence", before: "", label: "" };
    default:
      return { word: key, before: "", label: "" };
  }
}

const insulationForm = (study: WayStudy, label: string): Form => ({
  word: "insulation",
  before: `${plain(insulationLimit(study)?.testVoltage.value ?? 500)} V`,
  label,
});

/** What was entered, as the language has it. */
interface Reading {
  readonly form: Form;
  readonly value: string;
  readonly entry: Entry;
  readonly kind: "dead" | "live";
}

function place(text: string, way: Block, reading: Reading): Written {
  const { form, value, entry, kind } = reading;
  const block = way.statements.findLast(
    ({ word, args, block: inner }) => word.image === kind && args[0]?.image === entry.day && inner?.close !== undefined,
  )?.block;
  if (!block) return addBlock(text, way, reading);
  const line = block.statements.findLast((one) => isOf(one, form));
  if (!line) return addLine(text, block, lineOf(form, value), value);
  const there = valueIn(line, form) ?? (form.shown ? valueIn(line, { ...form, label: form.shown }) : undefined);
  if (!there) return { edit: { start: line.end, end: line.end, text: ` ${form.label} ${value}` }, value };
  const stands = text.slice(there.start, there.end);
  if (stands.replace(/\s+/g, " ") === value) return { edit: { start: there.start, end: there.start, text: "" }, value };
  const isDraft = entry.draft !== undefined && stands.replace(/\s+/g, " ") === entry.draft.replace(/\s+/g, " ");
  if (!isDraft && entry.why === undefined) return { stands };
  const reason = (entry.why ?? "").replace(/["\\\r\n]/g, " ").trim();
  // The reason of what was not measured goes with it; the correction has one of its own.
  const why = isDraft ? "" : ` was ${stands.replace(/\s*"[^"]*"$/, "")} "${reason}"`;
  return { edit: { start: there.start, end: there.end, text: `${value}${why}` }, value };
}

/** Whether a line takes a reading: the same word and, where several lines may have it, the same point or multiple. */
function isOf({ word, args }: Statement, { word: wanted, before }: Form): boolean {
  if (word.image !== wanted) return false;
  const images = args.map(({ image }) => image);
  if (wanted === "at") return images[0] === before;
  if (wanted !== "rcd") return true;
  const multiple = before.split(" ").at(-1) ?? "";
  return images.join("").includes(multiple);
}

/** Where the figure or word of a line stands: behind its label, or behind what comes before it. What follows is kept. */
function valueIn(
  { args }: Statement,
  { label, before, word }: Form,
): { readonly start: number; readonly end: number } | undefined {
  const isBefore = ({ image }: { readonly image: string }): boolean =>
    label === "" ? /x$/.test(image) : image === label;
  const from = label === "" && word !== "rcd" ? -1 : args.findIndex(isBefore);
  if (label !== "" && from < 0) return undefined;
  const [value, reason] = args.slice(from + 1);
  // Of three lines each has its figure, and the circuit may have none.
  if (!value || value.image === before || /^L\d$/.test(value.image)) return undefined;
  const why = /^(?:LIM|N\/A)$/.test(value.image) && reason?.image.startsWith('"') ? reason : undefined;
  return { start: value.startOffset, end: endOf(why ?? value) };
}

const lineOf = ({ word, before, label, behind = "" }: Form, value: string): string =>
  word === "at"
    ? inColumn({ head: `${word} ${before}`, args: inOneLine(label, value) })
    : inColumn({ head: word, args: inOneLine(before, label, value, behind) });

const inOneLine = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" ");

const lineBreak = (text: string): string => (text.includes("\r\n") ? "\r\n" : "\n");

/** As the last line of a block; of a block on one line, before its brace. */
function addLine(text: string, { close }: Block, line: string, value: string): Written {
  if (!close) return problem("The block of that day is not closed yet.");
  const start = text.lastIndexOf("\n", close.startOffset - 1) + 1;
  const indent = text.slice(start, close.startOffset);
  if (indent.trim() !== "")
    return problem("The block of that day stands on one line: put its } on a line of its own first.");
  return { edit: { start, end: start, text: `${indent}  ${line}${lineBreak(text)}` }, value };
}

function addBlock(text: string, { close }: Block, { form, value, entry, kind }: Reading): Written {
  if (!close) return problem("The way is not closed yet.");
  const start = text.lastIndexOf("\n", close.startOffset - 1) + 1;
  const indent = text.slice(start, close.startOffset);
  if (indent.trim() !== "") return problem("This way stands on one line: put its } on a line of its own first.");
  const instrument = entry.instrument ? ` with ${entry.instrument}` : "";
  const lines = [`  ${kind} ${entry.day}${instrument} {`, `    ${lineOf(form, value)}`, "  }"];
  const sign = lineBreak(text);
  return { edit: { start, end: start, text: lines.map((one) => `${indent}${one}${sign}`).join("") }, value };
}

/** The line is read as it will stand: what the language would refuse is not written. Half of a line may lack the rest. */
function checked({ way: { segment } }: WayStudy, result: { readonly edit: TextEdit; readonly value: string }): Written {
  const { edit } = result;
  const text = segment.text.slice(0, edit.start) + edit.text + segment.text.slice(edit.end);
  const before = new Set(bindSegment(segment, "board").problems.map(({ message }) => message));
  const fresh = bindSegment({ ...segment, text }, "board").problems.find(
    ({ check, message }) => check !== "missing-argument" && !before.has(message),
  );
  return fresh ? { problem: fresh.message } : result;
}
