import { distance } from "fastest-levenshtein";
import { type LanguageCheck, languageChecks } from "../../model/problems.ts";
import { safeIsolation } from "../../text/isolation.ts";
import { rules } from "../list.ts";
import { type Declaration, departureChecks } from "./departure-checks.ts";
import { presentId } from "./former-ids.ts";
import { historyChecks } from "./history-checks.ts";
import { languagePages } from "./language-pages.ts";
import { observationChecks } from "./observation-checks.ts";
import type { Example, Severity } from "./rule.ts";

/** What there is to know of one check, wherever it is made. */
export interface CheckPage {
  readonly id: string;
  readonly severity: Severity;
  readonly since: string;
  readonly title: string;
  readonly why: string;
  readonly clauses: readonly string[];
  readonly examples: readonly Example[];
}

const checkFailed: CheckPage = {
  id: "check/failed",
  severity: "warning",
  since: "0.1",
  title: "This check failed to run; the circuit is not judged by it.",
  why: "A check that failed must not be taken for one that found nothing. Judge this point by hand, and report the failure with the circuit that caused it.",
  clauses: [],
  examples: [],
};

const fileTooLarge: CheckPage = {
  id: "check/too-large",
  severity: "error",
  since: "0.1",
  title: "The file is larger than what is read of one file.",
  why: "A schedule of a thousand ways is under half a megabyte. A larger text was not written by a person, and checking it would keep the editor from answering; nothing of it is judged.",
  clauses: [],
  examples: [],
};

const underWay: CheckPage = {
  id: "check/under-way",
  severity: "information",
  since: "0.1",
  title: "The file is still being checked.",
  why: "What is found so far is shown where a first check of a large project takes long, boards that are looked at first. Where nothing is marked yet, nothing is shown to be right.",
  clauses: [],
  examples: [],
};

/** The version that most checks came with. */
const first = "0.1";

function languagePage(name: LanguageCheck): CheckPage[] {
  const page = languagePages[name];
  return page ? [{ id: `language/${name}`, since: first, clauses: [], severity: "error", ...page }] : [];
}

const checks: readonly Declaration[] = [
  ...rules,
  ...departureChecks,
  ...observationChecks,
  ...historyChecks,
  checkFailed,
  fileTooLarge,
  underWay,
];

/** Ids are small letters, hyphens and strokes: to compare them as a language would take longer than all else here. */
const inOrder = (a: CheckPage, b: CheckPage): number => (a.id < b.id ? -1 : Number(a.id > b.id));

function allPages(): CheckPage[] {
  const byId = new Map<string, CheckPage>();
  for (const name of languageChecks) for (const page of languagePage(name)) byId.set(page.id, page);
  // What is shipped has neither why a check matters nor its samples among the checks, nor that it is of the first version:
  // four hundred such lines weigh too.
  for (const { id, severity, since = first, title, why = "", opens, clauses, examples = [] } of checks)
    byId.set(id, { id, severity, since, title, why: opens ? `${why} ${safeIsolation}` : why, clauses, examples });
  return [...byId.values()].sort(inOrder);
}

/** Every check there is, by id. */
export const pages: readonly CheckPage[] = allPages();

const pagesById: ReadonlyMap<string, CheckPage> = new Map(pages.map((page) => [page.id, page]));

/** The page of a check, by its id or one it had before. */
export function pageOf(id: string): CheckPage | undefined {
  return pagesById.get(presentId(id));
}

const most = 5;

/** Checks that a text may mean, the likeliest first: part of an id, a regulation, a word of the title, or a misspelling. */
export function nearestPages(text: string): CheckPage[] {
  const wanted = text.trim().toLowerCase();
  if (wanted === "") return [];
  const ranked = pages.flatMap((page) => {
    const rank = rankOf(page, wanted);
    return rank === undefined ? [] : [{ page, rank }];
  });
  return ranked
    .sort((a, b) => a.rank - b.rank || a.page.id.localeCompare(b.page.id))
    .slice(0, most)
    .map(({ page }) => page);
}

function rankOf({ id, clauses, title }: CheckPage, wanted: string): number | undefined {
  const name = id.slice(id.indexOf("/") + 1);
  if (id === wanted || name === wanted) return 0;
  if (clauses.some((clause) => clause === wanted || clause.startsWith(`${wanted}.`))) return 1;
  if (id.includes(wanted)) return 2;
  const away = Math.min(distance(id, wanted), distance(name, wanted));
  if (away <= Math.max(1, Math.floor(wanted.length / 3))) return 2 + away;
  return title.toLowerCase().includes(wanted) ? wanted.length + 2 : undefined;
}
