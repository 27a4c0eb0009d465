import { WayStudy } from "../analysis/way.ts";
import { bindSegment } from "../model/bind.ts";
import type { Facts } from "../model/values.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import { type CableChoice, type DeviceChoice, editsFor } from "./lines.ts";

/**
 * The way as it would read with another device and cable, studied in the same place. What is judged is the text that
 * would be written, by what the checks ask of it, so that a proposal and the checks cannot disagree.
 */
export const trialOf = (study: WayStudy, device: DeviceChoice, cable: CableChoice): WayStudy | undefined =>
  edited(study, editsFor(study.way, device, cable));

/** The way as it would read after edits of its text. */
export function edited({ way, context }: WayStudy, edits: readonly TextEdit[]): WayStudy | undefined {
  const text = applyEdits(way.segment.text, edits);
  const segment = { ...way.segment, text };
  const header = bindSegment(segment, "board").facts.list.find(({ word }) => word === "way") as
    | typeof way.header
    | undefined;
  if (!header?.inner) return undefined;
  return new WayStudy({ ...way, header, facts: header.inner as Facts<"way">, segment }, context);
}
