/** What an inspection covered: its extent and limitations, what was inspected by sight, and each circuit. */
import { studyWay } from "../../circuit/way.ts";
import type { Inspection, OfCircuits } from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { Facts } from "../../model/values.ts";
import { distinctAbsences } from "../../readings/absences.ts";
import { circuitIn, namesCircuit } from "../../readings/inspection-scope.ts";
import { type Block, paragraph, table } from "../setting/document.ts";
import { absenceRows, type Placed } from "../summary/parts.ts";

export const text = (fact: { readonly args: { readonly text: { readonly value: string } } } | undefined): string =>
  fact?.args.text.value ?? "";

export function placeText({ args: { board, ways } }: OfCircuits): string {
  const ids = ways?.map(({ value }) => value);
  if (!ids) return board ? `board ${board.value}` : "the installation";
  if (board) return ids.map((id) => `${board.value}/${id}`).join(", ");
  return `${ids.length === 1 ? "way" : "ways"} ${ids.join(", ")}`;
}

/** What was not inspected by sight stands with the items. */
export const limitedTests = (parts: readonly Placed[]): string[][] =>
  absenceRows(
    parts.map((one) => ({
      ...one,
      facts: new Facts(
        one.facts.kind,
        one.facts.list.filter(({ word }) => word !== "inspection"),
        one.facts.broken,
      ),
    })),
    "LIM",
  );

export function extentBlocks({ head }: Installation, inspection: Inspection | undefined): Block[] {
  const facts = inspection?.facts;
  const extent = text(facts?.one("extent")) || text(head.facts.one("extent"));
  const sampled = (facts?.all("sampled-out") ?? []).map((line) => [
    "sampled out",
    placeText(line),
    line.args.reason.value,
    "",
  ]);
  const limits = (facts?.all("limitation") ?? []).map((line) => [
    `${line.args.kind.value} limitation`,
    placeText(line),
    `${line.args.what.value}: ${line.args.why.value}`,
    line.args.with?.value ?? "",
  ]);
  return [
    paragraph(extent === "" ? "The extent is not stated." : extent),
    ...table(["what", "where", "which, and why", "agreed with"], [...sampled, ...limits]),
    paragraph("Cables concealed in the fabric, under floors or in the ground were not inspected unless stated."),
  ];
}

/** The numbers of an edition whose list was not seen are not printed: they could be another edition's. */
export function inspectedBlocks({ edition }: Installation, inspection: Inspection | undefined): Block[] {
  const lines = inspection?.facts.all("inspected") ?? [];
  if (lines.length === 0) return [paragraph("Nothing is recorded as inspected by sight.")];
  const numbers = edition?.id.includes("+A4") !== true;
  const rows = lines.map(({ args }) => {
    const items = (args.items ?? []).map(({ value }) => value.replace("..", " to ")).join(", ");
    const result =
      "absent" in args.result
        ? `${args.result.absent}${args.result.why ? `: ${args.result.why}` : ""}`
        : args.result.value;
    return [
      numbers ? items : "",
      args.title?.value ?? (numbers ? "" : "items as listed in the schedule"),
      result === "ok" ? "✓" : result.replace("-", " "),
    ];
  });
  // Columns that would be empty are left out.
  const kept = [0, 1, 2].filter((at) => rows.some((row) => row[at] !== ""));
  const heads = ["item", "looked at", "found"];
  return table(
    kept.map((at) => heads[at] ?? ""),
    rows.map((row) => kept.map((at) => row[at] ?? "")),
  );
}

const states: Readonly<Record<string, string>> = {
  "not-covered": "not part of this inspection",
  tested: "tested",
  limited: "every test limited",
  "sampled-out": "sampled out",
  limitation: "not tested, under a limitation",
  missing: "not tested",
};

export function circuitRows({ board, context }: BoardInPlace, inspection: Inspection | undefined): string[][] {
  if (!inspection) return [];
  return board.ways
    .filter(({ kind }) => kind !== "spare")
    .map((way) => {
      const { state, before } = circuitIn(inspection, studyWay(way, context));
      const circuit = { board: board.head, way };
      const limited = inspection.facts.all("limitation").some((line) => namesCircuit(line, circuit));
      const partly = distinctAbsences(way.facts).some(({ value }) => value.absent === "LIM");
      return [
        `${board.head.name}/${way.id}`,
        way.title,
        state === "tested" && limited
          ? "tested in part, under a limitation"
          : state === "tested" && partly
            ? "tested in part"
            : (states[state] ?? state),
        state === "tested" ? "" : (before ?? ""),
      ];
    });
}
