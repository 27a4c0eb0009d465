/**
 * An inspection as one paper: what was looked at and what it came to on the first page, then particulars, extent and
 * limitations, then the schedules. The working is named, and not repeated.
 */
import { studyWay } from "../../circuit/way.ts";
import type { Inspection, InspectionKind, ObservationFact, OfCircuits } from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { type Fact, type FactOf, Facts } from "../../model/values.ts";
import { distinctAbsences } from "../../readings/absences.ts";
import { derivedOutcome } from "../../readings/inspection-outcome.ts";
import { circuitIn, namesCircuit } from "../../readings/inspection-scope.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import { capital, listed } from "../../text/words.ts";
import { written, writtenValue } from "../common/written.ts";
import { boardSection } from "../schedule/schedule.ts";
import { type Block, paragraph, part, type Report, type Section, table } from "../setting/document.ts";
import { absenceRows, byDeparture, departureRows, type Placed } from "../summary/parts.ts";
import { ownParts, partsOf } from "../summary/scope.ts";
import { coveredOn, obstacles, type Paper, paperOf, paperTitles } from "./paper.ts";
import { signatureRows } from "./signatures.ts";
import { supplyRows } from "./supply.ts";

export function inspectionReport(
  installation: Installation,
  result: CheckResult,
): Report | { readonly failure: string } {
  const paper = paperOf(installation);
  if ("failure" in paper) return paper;
  const boards = installation.boards.map((place) => onBoard(place, installation, paper));
  const against = obstacles(
    paper,
    result,
    boards.map(({ covered }) => covered),
  );
  if (against.length > 0)
    return { failure: `No ${names[paper.kind]} can be given: ${listed(against)}. “wayfile check” shows where.` };
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
      ...firstPage(installation, paper),
      ...rest(
        installation,
        paper,
        result,
        boards.flatMap(({ circuits }) => circuits),
      ),
      // Before the turned pages: behind them it would stand on a page of its own.
      { level: 2, title: "For the person who ordered it", blocks: [paragraph(guidance[paper.kind])] },
      ...boards.map(({ schedule }) => schedule),
    ],
    cautions: "",
  };
}

/**
 * All that the paper says of a board before anything of the next: what is worked out of the ways of a board is kept for a
 * few boards only.
 */
const onBoard = (place: BoardInPlace, installation: Installation, paper: Paper) => ({
  covered: coveredOn(place, paper),
  circuits: circuitRows(place, paper.inspection),
  // The schedules are part of the paper: each board on a page of its own, turned.
  schedule: turned(boardSection(place, installation)),
});

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

const text = (fact: { readonly args: { readonly text: { readonly value: string } } } | undefined): string =>
  fact?.args.text.value ?? "";

function firstPage(installation: Installation, { kind, inspection }: Paper): Section[] {
  const facts = inspection?.facts;
  const blocks: Block[] = [
    paragraph(whatAndWhen(installation, inspection)),
    ...(kind === "periodic" && inspection ? outcomeBlocks(inspection, installation) : []),
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

function outcomeBlocks(inspection: Inspection, { edition }: Installation): Block[] {
  const derived = derivedOutcome(inspection, edition);
  const stated = inspection.facts.one("outcome")?.args;
  const outcome = stated?.of.value ?? derived.outcome;
  const differs = stated !== undefined && stated.of.value !== derived.outcome;
  const why = differs
    ? `; the codes alone come to ${derived.outcome}${stated.why ? `. Reason: ${stated.why.value}` : ""}`
    : "";
  const open = inspection.facts.all("observation").some(({ args }) => args.code.value === "FI");
  return [
    paragraph(
      `Outcome: ${outcome} for continued use, ${stated ? "by the signatory" : `by the codes of the observations (${derived.source.ref})`}${why}.`,
    ),
    ...(open && outcome === "satisfactory"
      ? [paragraph("Further investigation is still required without delay.")]
      : []),
    ...observationBlocks(inspection.facts.all("observation")),
  ];
}

const actions: Readonly<Record<string, string>> = {
  C1: "danger present: make safe at once",
  C2: "potentially dangerous: urgent remedial action",
  C3: "improvement recommended",
  FI: "investigate without delay",
};

function observationBlocks(observations: readonly ObservationFact[]): Block[] {
  if (observations.length === 0) return [paragraph("No observation was made: nothing requires remedial action.")];
  return table(
    ["No.", "Code", "Where", "Observation", "Action"],
    observations.map(({ args }, at) => [
      String(args.number?.value ?? at + 1),
      args.code.value,
      [placeText({ args }), ...(args.at ? [`at ${args.at.value}`] : [])].join(" "),
      [
        args.text.value,
        // A check's own name means nothing to who ordered the report.
        ...(args.rule && !args.rule.value.includes("/") ? [`(${args.rule.value})`] : []),
        ...(args.photo ?? []).map(({ value }) => `Photograph ${value}.`),
      ].join(" "),
      args.remedied
        ? `put right ${args.remedied.value}${args.by ? `: ${args.by.value}` : ""}`
        : (actions[args.code.value] ?? ""),
    ]),
  );
}

function placeText({ args: { board, ways } }: OfCircuits): string {
  if (!board) return ways ? `ways ${ways.map(({ value }) => value).join(", ")}` : "the installation";
  return ways ? ways.map(({ value }) => `${board.value}/${value}`).join(", ") : `board ${board.value}`;
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

function rest(
  installation: Installation,
  { kind, inspection }: Paper,
  { suppressed }: CheckResult,
  circuits: string[][],
): Section[] {
  const parts = [...ownParts(installation), ...installation.boards.flatMap(partsOf)];
  const departures = departureRows(parts, byDeparture(suppressed)).map(([where = "", rule = "", reason = ""]) => [
    where,
    rule,
    reason,
  ]);
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

/** What was not inspected by sight stands with the items. */
const limitedTests = (parts: readonly Placed[]): string[][] =>
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

const orNot = (value: string): string => (value === "" ? "not stated" : value);

/** When what is inspected was installed, as its signatures state it: of the whole, else board by board. */
function whenInstalled({ head, boards }: Installation): string {
  const whole = head.facts.one("installed");
  if (whole) return dayOrYear(whole);
  const parts = boards.flatMap(({ board }) => {
    const own = board.head.facts.one("installed");
    const when = own ? dayOrYear(own) : "";
    return when === "" ? [] : [`board ${board.head.name} ${when}`];
  });
  return parts.join("; ");
}

const dayOrYear = (fact: FactOf<"installation" | "board", "installed">): string => {
  const { on, around } = fact.args;
  return on ? on.value : around ? writtenValue(fact, around) : "";
};

/** What is asked of an installation that stood there before; of new work it is shown where it is stated. */
const ofWhatWasThere: readonly string[] = ["Occupier", "Reason", "Wired", "Additions", "Records", "Last inspected"];

function particulars(
  installation: Installation,
  kind: InspectionKind,
  inspection: Inspection | undefined,
): [string, string][] {
  const { head } = installation;
  const facts = inspection?.facts;
  const client = facts?.one("client")?.args;
  const rows: [string, string][] = [
    ["Reference", text(facts?.one("reference"))],
    ["Issued", facts?.one("issued")?.args.on.value ?? ""],
    ["Ordered by", [client?.name.value, client?.address?.value].filter(Boolean).join(", ")],
    ["Occupier", facts?.one("occupier")?.args.name.value ?? ""],
    ["Reason", text(facts?.one("reason"))],
    ["Address", head.facts.one("location")?.args.text.value ?? ""],
    ["Premises", head.facts.one("premises")?.args.premises.value ?? ""],
    ...(["wired", "additions", "records", "last-inspected"] as const).map((word): [string, string] => {
      const fact = facts?.one(word);
      const stated = fact ? written(fact).replace(/^(none|not)-(?=\p{L})/u, "$1 ") : "";
      return [
        capital(word.replace("-", " ")),
        stated === "" && word === "wired" && kind === "periodic" ? whenInstalled(installation) : stated,
      ];
    }),
  ];
  return rows
    .filter(([name, fact]) => fact !== "" || kind === "periodic" || !ofWhatWasThere.includes(name))
    .map(([name, fact]) => [name, orNot(fact)]);
}

function extentBlocks({ head }: Installation, inspection: Inspection | undefined): Block[] {
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
function inspectedBlocks({ edition }: Installation, inspection: Inspection | undefined): Block[] {
  const lines = inspection?.facts.all("inspected") ?? [];
  if (lines.length === 0) return [paragraph("Nothing is recorded as inspected by sight.")];
  const numbers = edition?.id.includes("+A4") !== true;
  const rows = lines.map(({ args }) => {
    const items = (args.items ?? []).map(({ value }) => value).join(", ");
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

function circuitRows({ board, context }: BoardInPlace, inspection: Inspection | undefined): string[][] {
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
