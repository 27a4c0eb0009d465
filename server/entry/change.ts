/** Readings entered, as new texts of files: only added to, and in words for whoever entered them. */

import type { FileModel } from "../model/file.ts";
import { readFile } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import { entriesOfFile } from "../readings/entries.ts";
import { type Document, documentOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import type { Incoming } from "./blocks.ts";
import type { Entered } from "./enter.ts";
import { changedSegments } from "./into-text.ts";
import { placeName } from "./slots.ts";

type Failure = { readonly failure: string };

/** A file of a schedule, as far as writing into it needs. */
interface WritableFile {
  readonly document: Document;
  readonly model: FileModel;
}

export interface Change<F extends WritableFile> {
  readonly file: F;
  /** The segments that are another, with their new text. */
  readonly segments: ReadonlyMap<Segment, string>;
  readonly text: string;
}

/** The new texts of the files, once it is sure that all that was recorded is still there as it was. */
export function changesOf<F extends WritableFile>(
  files: readonly F[],
  installation: Installation,
  { blocks }: Entered,
): { readonly files: readonly Change<F>[] } | Failure {
  const fileOf = (segment: Segment) => files.find(({ document }) => document.segments.includes(segment));
  const changed = new Map(
    changedSegments(installation, blocks, (segment) => fileOf(segment)?.document).map(({ segment, text }) => [
      segment,
      text,
    ]),
  );
  const places = new Set(blocks.map(({ place }) => placeName(place)));
  if (changed.size < places.size) return { failure: "A place to write into was not found: nothing is written." };
  const touched = files.filter(({ document }) => document.segments.some((segment) => changed.has(segment)));
  const changes = touched.map(
    (file): Change<F> => ({
      file,
      segments: new Map([...changed].filter(([segment]) => file.document.segments.includes(segment))),
      text: file.document.segments.map((segment) => changed.get(segment) ?? segment.text).join(""),
    }),
  );
  const lost = changes.find(({ file, text }) => !holdsAll(file, { model: readFile(documentOf(text).segments) }));
  return lost
    ? { failure: "Writing would change what is recorded: nothing is written. Please report this." }
    : { files: changes };
}

/** Every fact that was there is there and says the same, and no line is broken that was not. */
function holdsAll(before: Pick<WritableFile, "model">, after: Pick<WritableFile, "model">): boolean {
  const said = (file: Pick<WritableFile, "model">): string[] =>
    entriesOfFile(file.model).map(({ at, meaning }) => `${at}\n${meaning}`);
  const left = new Set(said(after));
  const problems = ({ model }: Pick<WritableFile, "model">): number => [...model.problems.values()].flat().length;
  return said(before).every((one) => left.has(one)) && problems(after) <= problems(before);
}

/** What a file of readings held. */
export interface ReadIn {
  readonly incoming: readonly Incoming[];
  readonly unchanged: number;
  /** Headings that no reading was taken from. */
  readonly passed: readonly string[];
  /** The state of the schedule a worksheet was made of. */
  readonly base?: string;
}

const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;

/** What was entered, what was there already and what did not fit. */
export function enteredReport(
  { blocks, fresh, known, misfits, assumed }: Entered,
  { unchanged, passed }: ReadIn,
  paths: readonly string[],
  dry: boolean,
): string {
  const there = known + unchanged;
  const shown = dry
    ? blocks.flatMap(({ place, lines: block }) => [`${placeName(place)}:`, ...block.map((line) => `  ${line}`), ""])
    : [];
  const head =
    fresh === 0
      ? "No new reading is entered."
      : `${count(fresh, "reading")} in ${count(blocks.length, "new block")} ${dry ? "would be written" : "written"} to ${paths.join(", ")}.`;
  return [
    ...shown,
    head,
    ...(there > 0 ? [`${count(there, "reading is", "readings are")} recorded already.`] : []),
    ...assumed,
    ...(passed.length > 0 ? [`Columns that no reading was taken from: ${passed.join(", ")}.`] : []),
    ...(misfits.length > 0 ? ["", `Not entered (${misfits.length}):`] : []),
    ...misfitLines(misfits),
    "",
  ].join("\n");
}

/** What is wrong with several readings of one line alike is one line. */
function misfitLines(misfits: Entered["misfits"]): string[] {
  const alike = Map.groupBy(misfits, ({ source, why }) => `${source.split(", ", 1)[0]}\n${why}`);
  return [...alike.values()].map((group) => {
    const [first] = group;
    const others = group.slice(1).map(({ source }) => source.split(", ").slice(1).join(", "));
    return `  ${[first?.source, ...others].join(", ")}: ${first?.why}.`;
  });
}
