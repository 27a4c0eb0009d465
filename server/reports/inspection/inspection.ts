/**
 * An inspection as one paper: what was looked at and what it came to on the first page, then particulars, extent and
 * limitations, then the schedules. The working is named, and not repeated.
 */
import type { Inspection, InspectionKind } from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { listed } from "../../text/words.ts";
import { none } from "../common/target.ts";
import { boardSection } from "../schedule/schedule.ts";
import { type Block, paragraph, part, type Report, type Section, table } from "../setting/document.ts";
import { departuresOf } from "../summary/parts.ts";
import { ownParts, partsOf } from "../summary/scope.ts";
import { outcomeBlocks } from "./outcome.ts";
import { coveredOn, obstacles, type Paper, paperOf, paperTitles } from "./paper.ts";
import { particulars } from "./particulars.ts";
import { circuitRows, extentBlocks, inspectedBlocks, limitedTests, text } from "./scope.ts";
import { signatureRows } from "./signatures.ts";
import { supplyRows } from "./supply.ts";

interface Refused {
  readonly failure: string;
  /** The same in parts, for whoever has room for a list. */
  readonly title?: string;
  readonly reasons?: readonly string[];
}

/**
 * The paper of the latest inspection, or why there is none. `findings` are those of all files of the schedule; the
 * schedules are of all boards, or of the one that is looked at.
 */
export function inspectionReport(
  installations: readonly Installation[],
  findings: readonly Finding[],
  place?: BoardInPlace,
): Report | Refused {
  const [installation, ...others] = installations;
  if (!installation) return none;
  if (others.length > 0)
    return { failure: "This file holds several installations: a paper is of one, so keep each in a file of its own." };
  const paper = paperOf(installation);
  if ("failure" in paper) return paper;
  const boards = installation.boards.map((one) => onBoard(one, paper));
  const against = obstacles(
    paper,
    findings,
    boards.map(({ covered }) => covered),
  );
  if (against.length > 0)
    return {
      failure: `No ${names[paper.kind]} can be given: ${listed(against)}. “wayfile check” shows where.`,
      title: `No ${names[paper.kind]} can be given`,
      reasons: against,
    };
  const { edition, head } = installation;
  return {
    title: `${paperTitles[paper.kind]}: ${head.title || "an installation without a name"}`,
    lead: [
      edition ? `To ${edition.id}` : "The installation names no edition that is known.",
      ...(edition?.unseen ? [edition.unseen] : []),
      "The content follows the standard's informative models; the arrangement is this program's own.",
    ],
    close: true,
    sections: [
      ...firstPage(installation, paper, findings),
      ...rest(
        installation,
        paper,
        boards.flatMap(({ circuits }) => circuits),
      ),
      // Before the turned pages: behind them it would stand on a page of its own.
      { level: 2, title: "For the person who ordered it", blocks: [paragraph(guidance[paper.kind])] },
      // The schedules are part of the paper: each board on a page of its own, turned.
      ...(place ? [place] : installation.boards).map((one) => turned(boardSection(one, installation))),
    ],
    cautions: "",
  };
}

/** All that is asked of the ways of a board before any of the next: what is worked out of them is kept for a few boards. */
const onBoard = (place: BoardInPlace, paper: Paper) => ({
  covered: coveredOn(place, paper),
  circuits: circuitRows(place, paper.inspection),
});

/** The same work of every board, one at a step, so that whoever asks for the paper after it has the rest at once. */
export function* inspectionSteps([installation]: readonly Installation[]): Generator<void> {
  const paper = installation && paperOf(installation);
  if (!installation || !paper || "failure" in paper) return;
  for (const place of installation.boards) {
    onBoard(place, paper);
    yield;
  }
}

const turned = (section: Section): Section => ({
  ...section,
  title: `Circuit details and test results: ${section.title}`,
  turned: "landscape",
});

const names: Readonly<Record<InspectionKind, string>> = {
  initial: "installation certificate",
  periodic: "condition report",
  minor: "minor works certificate",
};

const guidance: Readonly<Record<InspectionKind, string>> = {
  initial:
    "Keep this paper and its schedules as long as the installation, and show it to whoever inspects it next. It is valid with its schedules only, and once a competent, licensed person has signed it.",
  periodic:
    "This report describes the condition on the days named and issues no certificate. C1 is danger present: act at once. C2 can become danger: act urgently. FI is to be investigated without delay; rules for let homes may set a time for it. C3 is a recommendation. Have remedial work confirmed in writing against the observation it closes, and keep the report for the next inspector. It is valid with its schedules only, and once a competent, licensed person has signed it.",
  minor:
    "Keep this paper with the records of the installation. It covers the circuit named and no other, and is valid once a competent, licensed person has signed it.",
};

function firstPage(installation: Installation, { kind, inspection }: Paper, findings: readonly Finding[]): Section[] {
  const facts = inspection?.facts;
  const blocks: Block[] = [
    paragraph(whatAndWhen(installation, inspection)),
    ...(kind === "periodic" && inspection ? outcomeBlocks(inspection, installation, findings) : []),
    ...(facts?.one("work-done") ? [paragraph(`Work: ${text(facts.one("work-done"))}`)] : []),
    ...(facts?.one("condition") ? [paragraph(`Condition: ${text(facts.one("condition"))}`)] : []),
    ...(facts?.one("comments") ? [paragraph(`On the existing installation: ${text(facts.one("comments"))}`)] : []),
    ...(facts ? existingBlocks(facts.all("existing")) : []),
    // Minor work is a part of an installation whose next inspection another paper sets.
    ...(inspection?.kind === "minor" && !facts?.has("next-inspection") ? [] : [paragraph(nextText(inspection))]),
    paragraph(declaration(kind, installation)),
    {
      kind: "caution",
      text: `This is help to the competent, licensed person who inspected, tested and signs; it is no ${kind === "periodic" ? "report" : "certificate"} until it is signed.`,
    },
    { kind: "signatures", rows: signatureRows(installation, inspection) },
  ];
  return [{ level: 1, title: kind === "periodic" ? "Outcome" : "Work and declaration", blocks }];
}

/** What a signature stands for: without it a name and a line say nothing. */
function declaration(kind: InspectionKind, { edition }: Installation): string {
  const complies = `to the best of my knowledge complies with ${edition?.id ?? "the edition of BS 7671 named"}, apart from the departures stated in this paper`;
  return {
    initial: `I declare that the work beside my name, for which I am responsible, was carried out with reasonable skill and care and ${complies}.`,
    periodic:
      "I declare that the inspection and the tests were carried out with reasonable skill and care, and that this report, with its schedules, describes the condition of the installation within the extent and the limitations stated.",
    minor: `I declare that the work does not impair the safety of the existing installation, that it was designed, carried out, inspected and tested with reasonable skill and care, and ${complies}.`,
  }[kind];
}

function whatAndWhen({ head }: Installation, inspection: Inspection | undefined): string {
  const location = head.facts.one("location")?.args.text.value;
  const days = inspection
    ? inspection.from === inspection.to
      ? inspection.from
      : `${inspection.from} to ${inspection.to}`
    : "";
  return `${head.title}${location ? `, ${location}` : ""}${days === "" ? "" : `: inspected and tested ${days}`}.`;
}

const existingBlocks = (
  lines: readonly (Fact & {
    readonly args: {
      readonly part: { value: string };
      readonly verdict: { value: string };
      readonly text?: { value: string };
    };
  })[],
): Block[] =>
  table(
    ["The existing installation", "found", "by"],
    lines.map(({ args }) => [
      args.part.value.replaceAll("-", " "),
      args.verdict.value,
      args.text?.value ?? "not stated",
    ]),
  );

function nextText(inspection: Inspection | undefined): string {
  const next = inspection?.facts.one("next-inspection")?.args;
  return next
    ? `Next inspection by ${next.on.value}: ${next.reason.value}.`
    : "Next inspection by: ______________, because ____________________________";
}

function rest(installation: Installation, { kind, inspection }: Paper, circuits: string[][]): Section[] {
  const parts = [...ownParts(installation), ...installation.boards.flatMap(partsOf)];
  const departures = departuresOf(parts).map(({ where, rule, reason }) => [where, rule, reason]);
  return [
    {
      level: 1,
      title: "Particulars",
      blocks: [{ kind: "particulars", rows: particulars(installation, kind, inspection) }],
    },
    ...part("Supply, earthing and bonding", [{ kind: "particulars", rows: supplyRows(installation) }]),
    ...part("Extent, sampling and limitations", extentBlocks(installation, inspection)),
    ...part("Tests limited", table(["where", "not measured", "reason"], limitedTests(parts))),
    ...part("Inspected by sight", inspectedBlocks(installation, inspection)),
    ...part(
      "Departures and permitted exceptions",
      departures.length > 0 ? table(["where", "from", "reason"], departures) : [paragraph("None.")],
    ),
    ...part("Circuits", table(["circuit", "serves", "in this inspection", "last tested before"], circuits)),
  ];
}
