/** The language reference: every block and every word in it, from the vocabulary. */
import { roughTimes } from "./choices.ts";
import type { Accepts, Param, WordRow } from "./params.ts";
import { quantities } from "./quantities.ts";
import { tokenRows } from "./tokens.ts";
import { physicalNames, units } from "./units.ts";
import { absences, type BlockKind, blockKinds, corrections, provenances, vocabulary } from "./vocabulary.ts";

const titles: Readonly<Record<BlockKind, string>> = {
  file: "The file",
  installation: "An installation",
  inspection: "An inspection",
  instrument: "An instrument",
  supply: "The supply",
  board: "A board",
  way: "A way",
  circuitType: "A circuit type",
  containment: "A conduit or trunking",
  dead: "Dead tests of a way",
  live: "Live tests of a way",
  boardDead: "Dead tests of a board",
  boardLive: "Live tests of a board",
  supplyLive: "Tests of a supply",
};

export function reference(): string {
  const kinds = blockKinds;
  const parts = [
    "# Wayfile: language reference",
    "",
    "<!-- begin: written by `npm run generate` from grammar/vocabulary.ts; do not edit -->",
    "",
    "Every word, by the block it stands in.",
    "How lines are read and how values are written stands in [SPEC.md](SPEC.md).",
    "In a form, `[ ]` may be left out, `…` may be repeated, and *italics* are values.",
    "",
    ...kinds.map((kind) => `- [${titles[kind]}](#${anchor(titles[kind])})`),
    "- [Quantities](#quantities)",
    "- [Units](#units)",
    "- [Tokens](#tokens)",
    "",
    ...kinds.flatMap(blockPart),
    ...quantityPart(),
    ...unitPart(),
    ...tokenPart(),
    "<!-- end -->",
  ];
  return `${parts.join("\n")}\n`;
}

const anchor = (title: string): string => title.toLowerCase().replaceAll(" ", "-");

function blockPart(kind: BlockKind): string[] {
  const rows = Object.entries(vocabulary[kind]);
  const homes = blockKinds.flatMap((home) =>
    Object.entries(vocabulary[home])
      .filter(([, row]) => row.opens === kind)
      .map(([word]) => `\`${word}\` in ${titles[home].toLowerCase()}`),
  );
  const opened = homes.length > 0 ? [`Opened by ${homes.join(" or ")}.`, ""] : [];
  return [`## ${titles[kind]}`, "", ...opened, ...rows.flatMap(([word, row]) => wordPart(word, row))];
}

function wordPart(word: string, row: WordRow): string[] {
  const params = Object.values(row.params);
  const block = row.opens ? (row.blockOptional ? " [ `{ }` ]" : " `{ }`") : "";
  const often = row.times === "once" ? "Once." : "As often as needed.";
  return [
    `### ${word}`,
    "",
    row.means,
    ...(row.background ? [row.background] : []),
    "",
    `\`${word}\`${params.map((param) => ` ${form(param)}`).join("")}${block}`,
    "",
    `${often}${row.limits ? ` Limits: ${row.limits}` : ""}`,
    "",
    ...(params.length > 0 ? [...params.map(argument), ""] : []),
    "```wayfile",
    row.example,
    "```",
    "",
  ];
}

function form(param: Param): string {
  const value = `*${shortName(param.accepts)}*${param.many ? " …" : ""}`;
  const whole = param.label === undefined ? value : `\`${param.label}\` ${value}`;
  return param.optional ? `[ ${whole} ]` : whole;
}

const names: Readonly<Record<string, string>> = {
  define: "name",
  ref: "name",
  text: "text",
  date: "date",
  standard: "standard",
  shorthand: "curve and rating",
  count: "whole number",
  multiple: "multiple",
  name: "name",
  roughTime: "year",
  rule: "regulation or check",
};

function shortName(accepts: Accepts): string {
  if (accepts.kind === "quantity") return accepts.of === "tripTime" ? "time" : words(accepts.of);
  if (accepts.kind === "choice")
    return Object.keys(accepts.choices).length === 1 ? Object.keys(accepts.choices).join("") : "choice";
  return accepts.kind === "path" ? "path" : (names[accepts.kind] ?? accepts.kind);
}

const words = (name: string): string =>
  name === "csa" ? "size" : name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

function argument({ accepts, label }: Param): string {
  const head = label === undefined ? `- ${accepts.help}` : `- \`${label}\` ${accepts.help}`;
  switch (accepts.kind) {
    case "quantity":
      return `${head}: ${quantities[accepts.of].what} in ${quantities[accepts.of].units.join(" or ")}${accepts.reading ? `; a reading, so ${Object.keys(absences).join(" and ")} may stand for it` : ""}`;
    case "choice":
      return [
        `${head}${accepts.absent ? `; ${Object.keys(absences).join(" and ")} may stand for it` : ""}:`,
        ...Object.entries(accepts.choices).map(([choice, meaning]) => `  - \`${choice}\`: ${meaning}`),
      ].join("\n");
    case "roughTime":
      return `${head}: a year, a year and month, or one of these before it:\n${Object.entries(roughTimes)
        .map(([word, meaning]) => `  - \`${word}\`: ${meaning}`)
        .join("\n")}`;
    case "ref":
      return `${head}${
        accepts.builtin
          ? `, or ${Object.keys(accepts.builtin)
              .map((name) => `\`${name}\``)
              .join(", ")}`
          : ""
      }`;
    default:
      return head;
  }
}

function quantityPart(): string[] {
  const rows = Object.entries(quantities).map(
    ([name, { what, units: usual, base, least, most }]) =>
      `| ${words(name)} | ${what} | ${usual.join(", ")} | ${least} to ${most} ${base} |`,
  );
  return [
    "## Quantities",
    "",
    "A figure outside its plausible range is taken for a slip of the unit or of the decimal point.",
    "",
    "| | what it is | written in | plausible |",
    "| --- | --- | --- | --- |",
    ...rows,
    "",
  ];
}

function unitPart(): string[] {
  const rows = units.map(
    ({ symbol, physical, factor, also }) =>
      `| ${symbol} | ${physicalNames[physical].replace(/^an? /, "")} | ${factor} | ${also.join(", ")} |`,
  );
  return [
    "## Units",
    "",
    "Read exactly, capitals and all: mA and MA are not the same.",
    "",
    "| unit | measures | in the base unit | also written |",
    "| --- | --- | --- | --- |",
    ...rows,
    "",
    "Words that say where a figure came from:",
    "",
    ...Object.entries({ ...provenances, ...corrections }).map(([word, meaning]) => `- \`${word}\`: ${meaning}`),
    "",
    "Signs for what was not measured:",
    "",
    ...Object.entries(absences).map(([word, meaning]) => `- \`${word}\`: ${meaning}`),
    "",
  ];
}

function tokenPart(): string[] {
  return [
    "## Tokens",
    "",
    "In this order; the first that matches wins.",
    "",
    ...tokenRows.flatMap(({ name, match, help }) => [
      `- **${name}**: ${help}`,
      "",
      "  ```regexp",
      `  ${match.source}`,
      "  ```",
      "",
    ]),
  ];
}
