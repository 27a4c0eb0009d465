/** What hovers and the working state of a conduit or trunking. */
import { groupingFactor } from "../calc/capacity-factors.ts";
import { metres, plain, squareMillimetres } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { ContainmentStudy } from "./study.ts";

/** How many more single cables of each size would go in. */
export function roomWords({ room }: ContainmentStudy): string | undefined {
  if (room.length === 0) return undefined;
  const some = room.filter(({ count }) => count > 0);
  return some.map(({ csa, count }) => `${count} × ${squareMillimetres(csa)}`).join(", or ") || "nothing";
}

/** The least conduit, or the trunking where what there is does not do. */
export function wantedWords({ wanted, fullest, isConduit }: ContainmentStudy): string | undefined {
  if (wanted === undefined || (!isConduit && fullest?.fill.fits)) return undefined;
  const text = typeof wanted === "number" ? plain(wanted) : `${plain(wanted.width)} × ${plain(wanted.depth)}`;
  return `${text} mm`;
}

export function circuitsWords({ circuits }: ContainmentStudy): string | undefined {
  if (circuits.length < 2) return undefined;
  const factor = groupingFactor(circuits.length, "bunched");
  return `${circuits.length} circuits${"missing" in factor ? "" : `, factor ${plain(factor.value)}`}`;
}

/** What is taken for granted because nobody says it, or because no table has it. */
export function takenWords(study: ContainmentStudy): string[] {
  const { assumesStranded, assumesThermoplastic, sections, isConduit } = study;
  return [
    ...(assumesStranded ? ["stranded, where solid is not written"] : []),
    ...(assumesThermoplastic
      ? ["90 °C singles by the factors of thermoplastic ones: for conduit no others are published"]
      : []),
    ...(isConduit && sections.some(({ length }) => length === undefined) ? ["short, where no length is written"] : []),
    ...(isConduit && sections.some(({ length, bends }) => length !== undefined && bends === undefined)
      ? ["straight, where no bends are written"]
      : []),
  ];
}

const waysWords = (studies: readonly WayStudy[]): string => studies.map(({ way }) => way.id).join(", ");

/** Which ways have no protective conductor of their own in it, and which they share. */
export function sharedWords({ sharedCpc }: ContainmentStudy): string | undefined {
  if (!sharedCpc) return undefined;
  const { borrowers, lenders, largest } = sharedCpc;
  return `way ${waysWords([...new Set(borrowers.map(({ study }) => study))])} with that of way ${waysWords(lenders)}, ${squareMillimetres(largest)} at most`;
}

/** Each length between draw-in points, where there are several: what it is, and how full. */
export function sectionsWords(
  study: ContainmentStudy,
): readonly (readonly [name: string, sum: string, full: string])[] {
  const fills = study.fills;
  if (fills.length < 2) return [];
  return fills.map(({ section, fill }) => {
    const { length, bends } = section ?? {};
    const run = `${length === undefined ? "length not stated" : metres(length)}, ${bends === undefined ? "bends not stated" : `${bends} bend${bends === 1 ? "" : "s"}`}`;
    const sign = fill.fits ? "≤" : ">";
    return [
      run,
      `${plain(fill.total.value, 1)} ${sign} ${plain(fill.room.value)}`,
      `${plain((fill.total.value / fill.room.value) * 100, 0)} %`,
    ];
  });
}
