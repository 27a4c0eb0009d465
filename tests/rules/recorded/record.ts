/**
 * All that a check says of its own samples, in plain lines: what it marks and how gravely, the figures with their limit and
 * its source, what it shows beside, its working, and what each fix leaves. And the same where one thing is another: a line
 * that is not there, a figure at which it turns, another stage, edition, earthing or kind of premises.
 */
import { installationsOf } from "../../../server/model/installation.ts";
import { checkInstallation } from "../../../server/rules/frame/check.ts";
import type { Finding, Related, Rule } from "../../../server/rules/frame/rule.ts";
import { sourceText } from "../../../server/tables/source.ts";
import { fileOfText } from "../../../server/workspace/loaded-file.ts";
import { differences } from "../../helpers/differences.ts";
import { inSetting, unmark } from "../../helpers/sample.ts";

interface Sample {
  /** `bad 1`, `good 1`, as they are counted in the rule. */
  readonly name: string;
  readonly text: string;
  /** The lines of its own, without what stands round them. */
  readonly from: number;
  readonly to: number;
}

export const samplesOf = ({ examples }: Rule): Sample[] =>
  examples.flatMap(({ bad, good, setting }, at) =>
    (["bad", "good"] as const).map((name) => {
      const lines = unmark(name === "bad" ? bad : good).text;
      const { text, above } = inSetting(lines, setting);
      return { name: `${name} ${at + 1}`, text, from: above, to: above + lines.split("\n").length };
    }),
  );

/** What the rule by itself finds in a text; nothing where the text is not sound. */
export function foundIn(rule: Rule, text: string): readonly Finding[] | undefined {
  const file = fileOfText("sample.ways", text);
  if (file.model.problems.size > 0 && [...file.model.problems.values()].some((problems) => problems.length > 0))
    return undefined;
  return installationsOf([file]).flatMap((installation) => checkInstallation(installation, [rule]).findings);
}

const said = (rule: Rule, text: string): string[] | undefined => foundIn(rule, text)?.flatMap(linesOf);

const figure = ({ amount, unit, which }: NonNullable<Finding["value"]>): string =>
  [amount, unit, which].filter((part) => part !== undefined && part !== "").join(" ");

/** The words that are marked, in their line. */
function placeOf({ segment, start, end }: Related["spot"]): string {
  const { text } = segment;
  const line = text.slice(text.lastIndexOf("\n", start - 1) + 1).split("\n", 1)[0] ?? "";
  const words = text.slice(start, end).replace(/\s*\n\s*/g, " ⏎ ");
  return words === line.trim() ? `“${words}”` : `“${words}” of “${line.trim()}”`;
}

function linesOf(finding: Finding): string[] {
  const { severity, spot, message, value, limit, verdict, margin, marginText, source, related, working, fixes } =
    finding;
  const figures = [
    ...(value ? [`value ${figure(value)}`] : []),
    ...(limit ? [`limit ${figure(limit)}`] : []),
    ...(margin === undefined ? [] : [`margin ${margin} (${marginText})`]),
    ...(verdict ? [verdict] : []),
  ];
  return [
    `${severity} at ${placeOf(spot)}: ${message}`,
    ...(figures.length > 0 ? [`  ${figures.join(", ")}`] : []),
    ...(source ? [`  source: ${sourceText(source)}`] : []),
    ...related.map((one) => `  beside ${placeOf(one.spot)}: ${one.message}`),
    ...(working?.split("\n").map((line) => `  working: ${line}`) ?? []),
    ...fixes.flatMap((fix) => [
      `  fix${fix.safe ? ", safe" : ""}${fix.misread ? ", misread" : ""}${fix.slip ? ", slip" : ""}: ${fix.title}`,
      ...changedLines(spot.segment.text, fix.edits),
    ]),
  ];
}

function changedLines(text: string, edits: Finding["fixes"][number]["edits"]): string[] {
  const after = edits
    .toSorted((a, b) => b.start - a.start)
    .reduce((all, edit) => all.slice(0, edit.start) + edit.text + all.slice(edit.end), text);
  return differences(text.split("\n"), after.split("\n")).map((line) => `    ${line}`);
}

/** What another text makes of what was said of the first. */
function against(rule: Rule, base: readonly string[], text: string): string[] {
  const now = said(rule, text);
  if (!now) return ["not sound"];
  if (now.length === 0 && base.length > 0) return ["silent"];
  return differences(base, now).map((line) =>
    line.startsWith("− ") && line.length > cut ? `${line.slice(0, cut)}…` : line,
  );
}

/** What is gone stands in full where the sample is recorded as it is. */
const cut = 42;

const shown = (name: string, lines: readonly string[]): string[] =>
  lines.length === 1 && lines[0] === "silent" ? [`${name}: silent`] : [`${name}:`, ...lines.map((line) => `  ${line}`)];

/** Each of the sample's own lines, with its block where it opens one. */
function withoutLines(rule: Rule, { text, from, to }: Sample): string[] {
  const base = said(rule, text) ?? [];
  const lines = text.split("\n");
  return Array.from({ length: to - from }, (_, at) => from + at).flatMap((at) => {
    const last = blockEnd(lines, at);
    const line = (lines[at] ?? "").trim();
    if (line === "" || line === "}" || last === undefined) return [];
    const other = against(rule, base, [...lines.slice(0, at), ...lines.slice(last + 1)].join("\n"));
    return other.length === 0 || other[0] === "not sound" ? [] : shown(`without “${line}”`, other);
  });
}

/** The last line of the block that a line opens, or the line itself. */
export function blockEnd(lines: readonly string[], from: number): number | undefined {
  let depth = 0;
  for (let at = from; at < lines.length; at++) {
    depth += (lines[at]?.match(/\{/g) ?? []).length - (lines[at]?.match(/\}/g) ?? []).length;
    if (depth <= 0) return depth === 0 ? at : undefined;
  }
  return undefined;
}

const settings: readonly (readonly [line: RegExp, values: readonly string[]])[] = [
  [/^(\s*stage\s+)\S+/m, ["design", "installed", "dead-tested", "tested"]],
  [/^(\s*work\s+)\S+/m, ["new", "addition", "existing"]],
  [/^(\s*premises\s+)\S+/m, ["dwelling", "commercial", "industrial", "care-home"]],
  [/^(\s*earthing\s+)(?:TN-S|TN-C-S|TT)/m, ["TN-S", "TN-C-S", "TT"]],
  [/^(\s*standard\s+)BS 7671.*/m, ["BS 7671:2001", "BS 7671:2008", "BS 7671:2018", "BS 7671:2018+A2:2022"]],
];

function elsewhere(rule: Rule, { text }: Sample): string[] {
  const base = said(rule, text) ?? [];
  return settings.flatMap(([line, values]) =>
    values.flatMap((value) => {
      const other = text.replace(line, `$1${value}`);
      if (other === text) return [];
      const found = against(rule, base, other);
      return found.length === 0 || found[0] === "not sound" ? [] : shown(value, found);
    }),
  );
}

const saysOf = (rule: Rule, { text }: Sample): string[] => said(rule, text) ?? ["not sound"];

/** Words of which the others may stand in the place of the one. */
const others: readonly (readonly [words: RegExp, values: readonly string[]])[] = [
  [/(?<=^\s*way \S+ )(?:ring|radial|feeder)\b/m, ["ring", "radial", "feeder"]],
  [/(?<=^\s*serves\s+)\S.*$/m, ["sockets", "lighting", "heating", "ev-charger", "pv", "alarms"]],
  [
    /(?<=\b(?:cable|cable-type \S+)\s+)(?:flat-twin|singles|armoured|multicore)\b/,
    ["flat-twin", "singles", "armoured"],
  ],
  [/(?<=\bdevice\s+BS EN \d+ )[BCD](?=\d)/, ["B", "C", "D"]],
  [/(?<=\bdevice\s+)BS (?:EN )?[\d-]+(?= [BCD]\d)/, ["BS EN 60898", "BS EN 61009"]],
  [/(?<= type )(?:AC|A|F|B)(?= |$)/m, ["AC", "A", "F", "B"]],
];

/** A reading that shows more or less than its figure, and one that was not taken. */
const offScale = /(?<=^\s*(?:R1\+R2|R2|Zs|Ze|Zdb|Ipf|PSCC|trip-current)\s+)[\d.]+ (?:Ω|kA|mA)/m;
const inRow = /(?<= (?:L-N|L-E|N-E|r1|rn|r2|1x|5x|0\.5x|continuity) )[\d.]+ (?:Ω|MΩ|ms)/g;

/** With a line of its way that says more. */
const besides = ['parallel-path "Steel conduit"', "work existing", "place bathroom zone outside", 'class-II "Lamps"'];

function otherwise(rule: Rule, { text }: Sample): string[] {
  const base = said(rule, text) ?? [];
  const texts = new Map<string, string>();
  for (const [words, values] of others) for (const value of values) texts.set(`${value}`, text.replace(words, value));
  const reading = offScale.exec(text)?.[0] ?? [...text.matchAll(inRow)][0]?.[0];
  for (const sign of reading ? [">", "<"] : [])
    texts.set(`${sign}${reading}`, text.replace(`${reading}`, `${sign}${reading}`));
  if (reading) texts.set(`LIM for ${reading}`, text.replace(reading, 'LIM "No access"'));
  for (const line of besides)
    texts.set(line, text.replace(/^(\s*way \S+ (?:ring|radial|feeder)\b.*\{)$/m, `$1\n${line}`));
  texts.set("of a circuit type", ofType(text));
  return [...texts].flatMap(([name, other]) => {
    const found = other === text ? [] : against(rule, base, other);
    return found.length === 0 || found[0] === "not sound" ? [] : shown(name, found);
  });
}

/** The design of the first way as a circuit type's, to which the way is. */
function ofType(text: string): string {
  const lines = text.split("\n");
  const at = lines.findIndex((line) => /^\s*way \S+ (?:ring|radial|feeder) ".*" \{$/.test(line));
  const end = at < 0 ? undefined : blockEnd(lines, at);
  if (end === undefined) return text;
  const [, id, kind, title] = /way (\S+) (\S+) (".*")/.exec(lines[at] ?? "") ?? [];
  const isDesign = (line: string): boolean => /^\s*(?:device|cable|route|serves|rcd)\b/.test(line);
  const own = lines.slice(at + 1, end);
  const type = [`circuit-type alike ${kind} {`, ...own.filter(isDesign), "}"];
  const way = [`way ${id} as alike ${title} {`, ...own.filter((line) => !isDesign(line))];
  const start = lines.findIndex((line) => line.startsWith("installation"));
  return [...lines.slice(0, start), ...type, ...lines.slice(start, at), ...way, ...lines.slice(end)].join("\n");
}

interface Figure {
  readonly line: string;
  readonly start: number;
  readonly written: string;
}

/** A figure by itself: none of the number of a standard, a day, a name or a multiple. */
const figures = /(?<![\w.:+×-])\d+(?:\.\d+)?(?![\w.×]|-\d|\+)/g;

/** The figures of a sample's own lines. Those of a standard say what it is, and nothing of how much. */
export function figuresOf({ text, from, to }: Sample): Figure[] {
  const lines = text.split("\n");
  let start = lines.slice(0, from).reduce((sum, line) => sum + line.length + 1, 0);
  return lines.slice(from, to).flatMap((line) => {
    const standards = [...line.matchAll(/BS (?:EN )?\d+/g)].map((match) => match.index + match[0].length);
    const found = [...line.matchAll(figures)]
      .filter(({ index, 0: written }) => !standards.includes(index + written.length))
      .map(
        (match): Figure => ({ line: line.trim().replace(/\s+/g, " "), start: start + match.index, written: match[0] }),
      );
    start += line.length + 1;
    return found;
  });
}

/** What is found with another figure there, by its gravity; nothing where that cannot be written. */
export function gravityWith(
  rule: Rule,
  { text }: Sample,
  { start, written }: Figure,
  value: string,
): string | undefined {
  const found = foundIn(rule, text.slice(0, start) + value + text.slice(start + written.length));
  return (
    found &&
    (found
      .map(({ severity }) => severity)
      .toSorted()
      .join(" ") ||
      "silent")
  );
}

/** One line of a record: which figure, and what is found with each of two values, the last that finds the one and the first that finds the other. */
export const turnText = (
  at: number,
  { line, written }: Figure,
  found: readonly (readonly [value: string, found: string])[],
): string => `${at}. ${written} of “${line}”: ${found.map(([value, words]) => `${value} ${words}`).join(", ")}`;

/** The same turns as they are found now. */
function turnsAgain(rule: Rule, sample: Sample, kept: readonly string[]): string[] {
  const all = figuresOf(sample);
  return kept.map((line) => {
    const at = Number(line.split(".", 1)[0]);
    const figure = all[at];
    const values = line
      .slice(line.lastIndexOf("”: ") + 3)
      .split(", ")
      .map((part) => part.split(" ", 1)[0] ?? "");
    if (!figure) return `${at}. There is no such figure.`;
    return turnText(
      at,
      figure,
      values.map((value) => [value, gravityWith(rule, sample, figure, value) ?? "not sound"] as const),
    );
  });
}

/** Each part of what is recorded of a sample, under its heading. */
export const parts: Readonly<Record<string, (rule: Rule, sample: Sample, kept: readonly string[]) => string[]>> = {
  says: saysOf,
  "without one of its lines": withoutLines,
  elsewhere: elsewhere,
  otherwise: otherwise,
  turns: turnsAgain,
};
