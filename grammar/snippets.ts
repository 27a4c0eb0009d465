/**
 * Snippets: the vocabulary's own examples, with a stop wherever a person writes something of their own. A reading has
 * no figure to begin with: one that was left standing by mistake would pass for a measurement.
 */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "./lexer.ts";
import type { WordRow } from "./params.ts";
import { parse, type Statement } from "./parser.ts";
import { quantities } from "./quantities.ts";
import { type BlockKind, rowOf, vocabulary } from "./vocabulary.ts";

export interface Snippet {
  readonly name: string;
  /** The block it belongs in. */
  readonly within: BlockKind;
  readonly text: string;
  readonly means: string;
}

const device = "device  BS EN 60898 B32 6 kA";

/** What one example cannot show: a way of each kind, and a whole schedule. */
const more: readonly Snippet[] = [
  {
    name: "way ring",
    within: "board",
    means: "A ring final circuit, to be designed.",
    text: `way 1 ring "Sockets" {
  ${device}
  cable   flat-twin  line 2.5 mm²  cpc 1.5 mm²
  route   clipped  method C
  run     A 7 m S1 6 m S2 9 m A
  serves  sockets
}`,
  },
  {
    name: "way feeder",
    within: "board",
    means: "A distribution circuit that feeds another board.",
    text: `way 1 feeder "Board B" {
  device  BS 88-2 63 A gG
  cable   armoured  line 16 mm²  cpc-by armour  cores 2
  route   tray  method E
  length  24 m
  feeds   B
}`,
  },
  { name: "way spare", within: "board", means: "A way with nothing on it.", text: "way 1 spare" },
  {
    name: "schedule",
    within: "file",
    means: "A whole schedule to begin with.",
    text: `wayfile 1

installation "Name" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new
  premises  dwelling

  supply {
    earthing  TN-C-S
    Ze        0.35 Ω declared
    Ipf       1.4 kA
    cutout    BS 88-3 80 A
  }

  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A

    way 1 radial "Lighting" {
      device  BS EN 61009 B6 6 kA 30 mA type A
      cable   flat-twin  line 1.5 mm²  cpc 1.0 mm²
      route   clipped  method C
      length  18 m
      serves  lighting
    }
  }
}`,
  },
];

/** Every word that opens a block, once for each text it stands for. */
export function snippets(): Snippet[] {
  const found: Snippet[] = [];
  for (const within of Object.keys(vocabulary) as BlockKind[]) {
    for (const [word, row] of Object.entries(vocabulary[within]) as [string, WordRow][]) {
      if (!row.opens || found.some(({ text }) => text === row.example)) continue;
      const name = word === "way" ? "way radial" : word;
      const taken = found.some((other) => other.name === name);
      found.push({ name: taken ? `${name} (${within})` : name, within, text: row.example, means: row.means });
    }
  }
  return [...found, ...more];
}

export function snippetFile(): string {
  const entries = snippets().map(({ name, within, text, means }) => [
    name,
    { prefix: name.replace(/ \(.*/, ""), body: withStops(text, within).split("\n"), description: means },
  ]);
  return `${JSON.stringify(Object.fromEntries(entries), undefined, 2)}\n`;
}

/** The text with a stop for every name, text, figure, date and choice in it. */
function withStops(text: string, within: BlockKind): string {
  const stops: { token: IToken; row: WordRow }[] = [];
  const visit = (kind: BlockKind, statements: readonly Statement[]): void => {
    for (const { word, args, block } of statements) {
      const row = rowOf(kind, word.image);
      if (!row) continue;
      for (const token of args) stops.push({ token, row });
      if (block && row.opens) visit(row.opens as BlockKind, block.statements);
    }
  };
  visit(within, parse(text).statements);
  let result = "";
  let at = 0;
  let nStops = 0;
  for (const { token, row } of stops) {
    const stop = stopOf(token, row, nStops + 1);
    if (stop === undefined) continue;
    nStops++;
    result += text.slice(at, token.startOffset) + stop;
    at = endOf(token);
  }
  return result + text.slice(at);
}

function stopOf(token: IToken, row: WordRow, index: number): string | undefined {
  const params = Object.values(row.params);
  if (params.some(({ label }) => label === token.image) || token.image === "wayfile") return undefined;
  for (const { accepts } of params) {
    if (accepts.kind !== "choice" || !Object.hasOwn(accepts.choices, token.image)) continue;
    const others = Object.keys(accepts.choices).filter((choice) => choice !== token.image);
    return `\${${index}|${[token.image, ...others].join(",")}|}`;
  }
  if (isToken(token, "Text")) return `"\${${index}:${escaped(token.image.slice(1, -1))}}"`;
  if (isToken(token, "Date")) return `\${${index}:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`;
  if (isToken(token, "Quantity")) {
    const figure = /^[^\d]*[\d.]+/.exec(token.image)?.[0] ?? "";
    const unit = token.image.slice(figure.length);
    return isReading(unit.trim(), row) ? `\${${index}}${unit}` : `\${${index}:${figure}}${unit}`;
  }
  return `\${${index}:${escaped(token.image)}}`;
}

const isReading = (unit: string, row: WordRow): boolean =>
  Object.values(row.params).some(({ accepts }) => {
    const units: readonly string[] = accepts.kind === "quantity" && accepts.reading ? quantities[accepts.of].units : [];
    return units.includes(unit);
  });

const escaped = (text: string): string => text.replace(/[\\$}]/g, "\\$&");
