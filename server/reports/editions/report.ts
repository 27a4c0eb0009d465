/** The differences between editions, compact enough to read at one sitting. */
import type { Installation } from "../../model/installation.ts";
import { type Edition, editions } from "../../tables/editions.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import { type EditionDifference, editionDifference, type FindingChange, type LimitChange } from "./editions.ts";

/** All editions but the installation's own, oldest first, or the one that is asked for. */
export function editionsReport(installation: Installation, wanted?: Edition): Report {
  const own = installation.edition;
  const asked = wanted ? [wanted] : editions.filter((edition) => edition !== own);
  const name = installation.head.title || "an installation without a name";
  return {
    title: `Editions: ${name}`,
    lead: [
      own
        ? `Worked to ${own.id} (${own.name}). What each other edition would change:`
        : "The installation names no edition that is known, so every limit of another comes new.",
      ...(own ? unseenText(own) : []),
    ],
    sections: asked.map((edition) => sectionOf(editionDifference(installation, edition), own)),
    cautions:
      "The schedule is compared with the figures of each edition that are known here; other requirements of an edition are not. An installation is judged by the edition it was made to, and a later one does not make it unsafe.",
  };
}

function sectionOf({ edition, findings, limits }: EditionDifference, own: Edition | undefined): Section {
  const blocks: Block[] = [
    ...unseenText(edition).map(paragraph),
    ...(edition === own ? [paragraph("This is the edition the installation is worked to.")] : []),
    ...table(["where", "change", "check", "what is found"], findingRows(findings)),
    ...table(["limit", "now", "then", "ways"], limitRows(limits)),
  ];
  if (findings.length === 0)
    blocks.push(
      paragraph(
        limits.length > 0
          ? "No finding would come, go or move."
          : edition.unseen
            ? "By those figures nothing would change."
            : "Nothing would change.",
      ),
    );
  return { level: 1, title: `${edition.id}, ${edition.name}, of ${edition.from}`, blocks };
}

function unseenText({ unseen, takesNumbersFrom: from }: Edition): string[] {
  if (unseen === undefined) return [];
  return [`${unseen}${from ? ` What differs in it is not known here: it is compared by the figures of ${from}.` : ""}`];
}

const words = { appears: "comes", vanishes: "goes", differs: "moves" } as const;

/** Places where the same is found share a row. */
function findingRows(findings: readonly FindingChange[]): string[][] {
  const rows = findings.map((change) => ({ where: change.where, cells: cellsOf(change) }));
  const groups = Map.groupBy(rows, ({ cells }) => cells.join("|"));
  return [...groups.values()].map((group) => [
    [...new Set(group.map(({ where }) => where))].join(", "),
    ...(group[0]?.cells ?? []),
  ]);
}

function cellsOf({ kind, before, after }: FindingChange): string[] {
  const finding = after ?? before;
  const was = kind === "differs" && before && before.severity !== after?.severity ? ` (was: ${before.severity})` : "";
  return [words[kind], finding?.check ?? "", `${finding?.severity ?? ""}${was}: ${finding?.message ?? ""}`];
}

/** Ways whose limit moves alike share a row. */
function limitRows(limits: readonly LimitChange[]): string[][] {
  const groups = Map.groupBy(limits, ({ name, before, after }) => `${name}|${before}|${after}`);
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first ? [[first.name, first.before, first.after, group.map(({ where }) => where).join(", ")]] : [];
  });
}
