import { distance } from "fastest-levenshtein";
import { siteTerms } from "../../grammar/site-terms.ts";
import { isSlipOf } from "../text/slip-of.ts";

/** The word of a list that is meant by one that is not in it: by another word said on site, or by a misspelling. */
export function suggestionFor(word: string, words: readonly string[]): string | undefined {
  return wordForSiteTerm(word, words) ?? nearest(word, words) ?? byItsBeginning(word, words) ?? byItsPart(word, words);
}

/** `clip`, `bath`: a word that is half written, where one alone begins so. */
function byItsBeginning(word: string, words: readonly string[]): string | undefined {
  const folded = word.toLowerCase();
  const [only, ...others] = folded.length < 3 ? [] : words.filter((one) => one.toLowerCase().startsWith(folded));
  return others.length === 0 ? only : undefined;
}

/** `smoke-alarms`: one of the words it is put together from is a word of the list. */
function byItsPart(word: string, words: readonly string[]): string | undefined {
  const parts = word.toLowerCase().split("-");
  if (parts.length < 2) return undefined;
  const exact = parts.findLast((part) => words.includes(part));
  return exact ?? parts.map((part) => wordForSiteTerm(part, words)).find((ours) => ours !== undefined);
}

/** The word of a list for which another is said on site. */
export const wordForSiteTerm = (word: string, words: readonly string[]): string | undefined =>
  termsFor(word).find((ours) => words.includes(ours));

/** The word of a list that is written in any capitals, or else the one for which another is said on site. */
export const wordInAnyCase = (word: string, words: readonly string[]): string | undefined =>
  words.find((ours) => ours.toLowerCase() === word.toLowerCase()) ?? wordForSiteTerm(word, words);

/** All words of the language that one said on site may stand for, the likeliest first. */
export function termsFor(word: string): readonly string[] {
  const folded = word.toLowerCase();
  return Object.hasOwn(siteTerms, folded) ? (siteTerms[folded] ?? []) : [];
}

/** The word of a list that is nearest to a misspelt one, if any is near enough to be meant. */
export function nearest(word: string, words: readonly string[]): string | undefined {
  // A number that is not in the list is no slip of another.
  if (/^\d+$/.test(word)) return undefined;
  const folded = word.toLowerCase();
  const ranked = words
    .map((candidate) => ({ candidate, away: slips(folded, candidate.toLowerCase()) }))
    .sort((a, b) => a.away - b.away);
  const best = ranked[0];
  return best && best.away <= Math.max(1, Math.floor((word.length + 1) / 3)) ? best.candidate : undefined;
}

/** The three words of a list that are likest to another; where none is like it, the first three. */
export function likest(word: string, words: readonly string[]): readonly string[] {
  const folded = word.toLowerCase();
  const like = words
    .map((candidate) => ({ candidate, away: slips(folded, candidate) / Math.max(folded.length, candidate.length) }))
    .filter(({ away }) => away <= 0.5)
    .sort((a, b) => a.away - b.away)
    .map(({ candidate }) => candidate);
  return [...new Set([...like, ...words])].slice(0, 3);
}

/** Letters to change; two neighbours that changed places are one slip. */
const slips = (written: string, word: string): number => (isSlipOf(written, word) ? 1 : distance(written, word));

const pairs = Object.entries(siteTerms).flatMap(([said, words]) => words.map((word) => ({ word, said })));
const byWord = Map.groupBy(pairs, ({ word }) => word);

/** What is said on site for a word of the language. */
export const siteTermsOf = (word: string): readonly string[] => byWord.get(word)?.map(({ said }) => said) ?? [];
