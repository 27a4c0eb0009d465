import { studyWay, type WayStudy } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import type { Proposal, Wants } from "../../server/proposal/proposal.ts";
import { propose } from "../../server/proposal/propose.ts";
import { written } from "../../server/proposal/write.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fileOfText, type LoadedFile } from "../../server/workspace/loaded-file.ts";
import { inSetting } from "../helpers/sample.ts";

interface Proposed {
  readonly proposal: Proposal;
  readonly study: WayStudy;
  /** The file before, and its text with the proposal written into it. */
  readonly before: string;
  readonly after: string;
}

/** Proposes for the first way of a sample. */
export function proposed(lines: string, setting: Setting = {}, wants: Wants = {}): Proposed {
  const before = inSetting(lines, setting).text;
  const file = fileOfText("sample.ways", before);
  const study = firstWay(file);
  const proposal = propose(study, wants, installationsOf([file])[0]);
  return { proposal, study, before, after: textWith(file, study, proposal) };
}

export function firstWay(file: LoadedFile): WayStudy {
  const place = installationsOf([file])[0]?.boards[0];
  const way = place?.board.ways[0];
  if (!place || !way) throw new Error("The sample has no way.");
  return studyWay(way, place.context);
}

export function textWith(file: LoadedFile, { way }: WayStudy, { fix }: Proposal): string {
  return file.document.segments
    .map((segment) => (segment === way.segment && fix ? written(file.document, segment, fix.edits) : segment.text))
    .join("");
}

/** The line size a proposal comes to, mm². */
export const lineOf = ({ cable }: Proposal): number => Number(/line ([\d.]+) mm²/.exec(cable ?? "")?.[1]);
export const ratingOf = ({ device }: Proposal): number =>
  Number(/ [BCD]?([\d.]+)(?: A)?(?: |$)/.exec(device?.replace(/^device BS (?:EN )?[\d-]+/, "") ?? "")?.[1]);
export const whyNot = ({ ruledOut }: Proposal, candidate: string): string | undefined =>
  ruledOut.find((one) => one.candidate.startsWith(candidate))?.why;
