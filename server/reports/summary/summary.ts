/** One page to sign off against: what is proven, what is left open and why, and whether the stage is honest. */

import { latestInspection } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import { isMissingTest } from "../../rules/common/missing-tests.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { capital } from "../../text/words.ts";
import { sharesOf } from "../common/shares.ts";
import { written } from "../common/written.ts";
import { signatureRows } from "../inspection/signatures.ts";
import { citedReport } from "../setting/cited.ts";
import { type Block, paragraph, part, type Report, type Section, table, together } from "../setting/document.ts";
import {
  absenceRows,
  byDeparture,
  correctedRows,
  departureRows,
  detailRows,
  findingRows,
  memoryRows,
  queryRows,
  type Suppressed,
  struckOutRows,
} from "./parts.ts";
import { blocksOf, ownBlocksOf, ownParts, partsOf, placesIn, type Scope, scopesOf } from "./scope.ts";
import { stageJudgement } from "./stage.ts";
import { madeRows, marginRows } from "./tests.ts";

/** A page for each installation of a file, each with what concerns it. */
export const summariesOf = (installations: readonly Installation[], all: CheckResult): Report | undefined =>
  together(sharesOf(installations, all).map(({ installation, result }) => summaryOf(installation, result)));

type WhereOf = (finding: Finding) => string;

export function summaryOf(installation: Installation, result: CheckResult): Report {
  const name = installation.head.title || "an installation without a name";
  const { edition, head } = installation;
  const said = (word: "stage" | "work" | "designed" | "installed" | "tested"): string[] => {
    const fact = head.facts.one(word);
    return fact ? [`${word} ${written(fact)}`] : [];
  };
  const where = placesIn(installation);
  const scopes = scopesOf(installation, result);
  const suppressed = byDeparture(result.suppressed);
  const signedBy = signatureRows(installation, latestInspection(head));
  const whereOf: WhereOf = ({ spot }) => where.get(spot.segment) ?? "installation";
  const report: Report = {
    title: `Summary: ${name}`,
    close: true,
    lead: [
      edition ? `Worked to ${edition.id} (${edition.name})` : "The installation names no edition that is known.",
      ...(edition?.unseen ? [edition.unseen] : []),
      ...[["stage", "work"] as const, ["designed", "installed", "tested"] as const].flatMap((words) => {
        const text = words.flatMap(said).join("; ");
        return text === "" ? [] : [capital(text)];
      }),
    ],
    sections: [
      { level: 1, title: "Before you sign", blocks: signing(installation, result) },
      ...scopes.flatMap((scope) => scopeSections(scope, installation, suppressed, whereOf)),
      ...part("Figures to verify in your own copy", toVerify(scopes, whereOf)),
      { level: 2, title: "Signed", blocks: [{ kind: "signatures", rows: signedBy }] },
    ],
    cautions:
      "This page counts what the schedule says and what the checks find in it. A test counts as made whatever it read; what is wrong with it stands under what is found. The page does not see the installation: that a test was made well is for those who sign.",
  };
  return citedReport(report, edition);
}

/** What it is, how many of it, and what becomes of them. */
type OpenRow = readonly [what: string, count: number, how: string];

/** Of what is worth no line where there is none. */
const ifAny = (...row: OpenRow): readonly OpenRow[] => (row[1] > 0 ? [row] : []);

/** What has to be settled or accepted, with a place for a pen. */
function signing(installation: Installation, result: CheckResult): Block[] {
  const { findings } = result;
  const parts = [...ownParts(installation), ...installation.boards.flatMap(partsOf)];
  const blocks = [...ownBlocksOf(installation), ...installation.boards.flatMap(blocksOf)];
  const missing = findings.filter(isMissingTest);
  const others = findings.filter((finding) => !isMissingTest(finding));
  const of = (severity: Finding["severity"]) => others.filter((finding) => finding.severity === severity).length;
  const absent = (kind: "LIM" | "N/A") => absenceRows(parts, kind).length;
  const unproven = others.filter(({ verdict }) => verdict === "unproven").length;
  const asRemembered = others.filter(({ check }) => check === "design/passes-as-remembered").length;
  const [struckOut, corrected] = [struckOutRows(parts).length, correctedRows(parts).length];
  const rows: OpenRow[] = [
    ["tests missing", missing.length, "to be made"],
    ["errors", of("error"), "to be put right"],
    ["warnings", of("warning"), "to be put right or departed from"],
    ...ifAny("of these unproven", unproven, "figures to be looked up"),
    ["remarks for information", of("information"), "to be read"],
    ...ifAny("of these passing as remembered only", asRemembered, "figures to be looked up"),
    ["open queries", queryRows(blocks).length, "to be answered"],
    ["limitations", absent("LIM"), "to be accepted"],
    ["not applicable", absent("N/A"), "to be agreed with"],
    ...ifAny("tests struck out", struckOut, "to be accepted"),
    ...ifAny("readings corrected", corrected, "to be accepted"),
    ["departures", departureRows(parts, byDeparture(result.suppressed)).length, "to be accepted"],
  ];
  const none = rows.filter(([, count]) => count === 0).map(([what]) => what);
  return [
    stageJudgement(installation, result),
    ...table(
      ["what", "how many", "what for", "seen by, and when"],
      rows.filter(([, count]) => count > 0).map(([what, count, how]) => [what, String(count), how, "________"]),
    ),
    // What there is none of takes no row: a sound board is to fit on its page.
    ...(none.length > 0 ? [{ kind: "paragraph", text: `None: ${none.join(", ")}.` } as const] : []),
  ];
}

/** Once for all boards: a figure is looked up once, however many circuits it decides. */
function toVerify(scopes: readonly Scope[], whereOf: WhereOf): Block[] {
  const lines = scopes.flatMap((scope) => [...scope.lines]);
  const findings = scopes.flatMap(({ result }) => result.findings.filter((finding) => !isMissingTest(finding)));
  return table(["figure", "source, to be checked in your copy", "where"], memoryRows(lines, findings, whereOf));
}

/** Sections that are looked for, and what there is none of where one is not there. */
const absentParts: Readonly<Record<string, string>> = {
  Missing: "tests missing",
  Limited: "limitations",
  "Not applicable": "not applicable",
  "Departed from": "departures",
  "Open queries": "open queries",
  Found: "findings",
};

function scopeSections(scope: Scope, installation: Installation, suppressed: Suppressed, whereOf: WhereOf): Section[] {
  const { parts, result } = scope;
  const missing = result.findings.filter(isMissingTest);
  const others = result.findings.filter((finding) => !isMissingTest(finding));
  const made = madeRows(scope.tests, scope.days, installation);
  const sections = [
    ...part("Tests made", table(["test", "read on", "latest", "by", "with"], made)),
    ...part("Least margin", table(["reading", "where", "what", "read", "limit", "left"], marginRows(scope.tests))),
    ...part(
      "Missing",
      table(
        ["where", "what"],
        missing.map((finding) => [whereOf(finding), finding.message]),
      ),
    ),
    ...part("Limited", table(["where", "not measured", "reason given"], absenceRows(parts, "LIM"))),
    ...part("Not applicable", table(["where", "what", "reason given"], absenceRows(parts, "N/A"))),
    ...part(
      "Departed from",
      table(["where", "from", "reason given", "what it suppresses"], departureRows(parts, suppressed)),
    ),
    ...part("Struck out", table(["where", "what", "reason given", "by, and when"], struckOutRows(parts))),
    ...part("Corrected", table(["where", "what", "recorded before", "reason given"], correctedRows(parts))),
    ...part("Details", table(["where", "detail", "what is recorded"], detailRows(parts))),
    ...part("Open queries", table(["where", "question"], queryRows(scope.blocks))),
    ...part("Found", table(["severity", "where", "check", "finding"], findingRows(others, whereOf))),
  ];
  const silent = Object.entries(absentParts).flatMap(([title, none]) =>
    sections.some((section) => section.title === title) ? [] : [none],
  );
  const nothing = [
    ...(made.length === 0 ? ["Nothing is proven here by a reading."] : []),
    ...(silent.length > 0 ? [`None: ${silent.join(", ")}.`] : []),
  ];
  return [{ level: 1, title: scope.title, blocks: nothing.map(paragraph) }, ...sections];
}
