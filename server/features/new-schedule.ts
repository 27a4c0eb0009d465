import { earthings, premises } from "../../grammar/choices.ts";
import { editions } from "../tables/editions.ts";
import { languageVersion } from "../workspace/language-version.ts";
import { editionsFirst } from "./skeletons.ts";
import { earthingsFirst, inFront } from "./trade-order.ts";

interface Choice {
  readonly id: string;
  readonly label: string;
  readonly detail: string;
}

const choicesOf = (words: Readonly<Record<string, string>>, first: readonly string[]): readonly Choice[] =>
  inFront(Object.keys(words), first).map((id) => ({ id, label: id, detail: words[id] ?? "" }));

/** What a new schedule may be started with, the usual first. */
export const earthingChoices: readonly Choice[] = choicesOf(earthings, earthingsFirst);
export const premisesChoices: readonly Choice[] = choicesOf(premises, ["dwelling", "commercial", "industrial"]);

/** What is in force stands first, then what has been withdrawn, the newest before the oldest. */
export const standardChoices: readonly Choice[] = inFront(
  editions.toReversed().map(({ id }) => id),
  editionsFirst,
).flatMap((id) => {
  const edition = editions.find((one) => one.id === id);
  return edition ? [{ id, label: id, detail: edition.inForce ? edition.name : `${edition.name}, withdrawn` }] : [];
});

/** The most ways that are laid out: a board of more is written as it is found. */
export const mostWays = 48;

interface Beginning {
  readonly name: string;
  readonly earthing: string;
  readonly standard: string;
  readonly premises?: string;
  /** How many ways the board has: each is spare until it is written. */
  readonly ways?: number;
}

/** A schedule to go on from: it says what every schedule must, and nothing that would have to be taken back. */
export function newSchedule({ name, earthing, standard, premises: kind, ways = 1 }: Beginning): string {
  const title = name.replace(/[\r\n]+/g, " ").replace(/["\\]/g, "\\$&");
  const rows = Array.from({ length: Math.min(mostWays, Math.max(1, Math.floor(ways))) }, (_, at) => at + 1);
  return `wayfile ${languageVersion}

installation "${title}" {
  standard     ${standard}
  stage        design
  work         new
${kind === undefined ? "" : `  premises     ${kind}\n`}
  supply {
    earthing     ${earthing}
    U0           230 V
  }

  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A

${rows.map((number) => `    way ${number} spare\n`).join("")}  }
}
`;
}
