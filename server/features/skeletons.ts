/**
 * Blocks laid out ready to fill: the one source of what an editor calls snippets. Each knows its place: the next free
 * number, what this board is made of, what kind of premises it is. A stop holds a choice or nothing at all, never words
 * about itself, and never a reading. A device or a cable is filled in while a schedule is designed; later they are what
 * was found, and wait for whoever found them.
 */

import { type Use, wayKinds } from "../../grammar/choices.ts";
import type { Choices } from "../../grammar/params.ts";
import { plain } from "../calc/result.ts";
import { alignedLine } from "../format/column.ts";
import { editions } from "../tables/editions.ts";
import { flatPairs } from "../tables/sizing-practice.ts";
import { languageVersion } from "../workspace/language-version.ts";
import type { Bearings } from "./bearings.ts";
import type { Offer } from "./offers.ts";
import { curvesFor, earthingsFirst, inFront, lineSizesFor, methodsFor, ratingsFor, usesFirst } from "./trade-order.ts";

/** Lays out a snippet: each call gives the next stop. */
class Stops {
  #next = 1;

  /** Left for the writer. */
  get blank(): string {
    return `\${${this.#next++}}`;
  }

  /** One of these; the first stands there until another is chosen. */
  oneOf(choices: readonly string[]): string {
    const [only, ...others] = choices;
    if (only === undefined) return this.blank;
    const stop = this.#next++;
    return others.length === 0 ? `\${${stop}:${only}}` : `\${${stop}|${choices.map(escaped).join(",")}|}`;
  }

  /** The day it is, to be changed; the same in every place of this number. */
  get today(): string {
    return `\${${this.#next++}:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}`;
  }
}

const escaped = (text: string): string => text.replace(/[\\,|$}]/g, "\\$&");

/** A block whose first line is `head`, with the cursor behind it once all is filled in. */
const block = (head: string, lines: readonly string[]): string =>
  `${head} {\n${lines.map((line) => `\t${alignedLine(line)}`).join("\n")}\n}$0`;

/** The next free number of the board. */
export function nextNumber({ board }: Bearings, except?: unknown): string {
  const taken = (board?.ways ?? [])
    .filter(({ segment }) => segment !== except)
    .map(({ id }) => Number.parseInt(id, 10));
  return String(Math.max(0, ...taken.filter((id) => Number.isInteger(id))) + 1);
}

/** A whole way by its kind, and by what it is for. */
export function waySkeletons(bearings: Bearings, number: string): Offer[] {
  const head = `way ${number}`;
  return [
    {
      label: "feeder",
      kind: "block",
      detail: `${head}: ${wayKinds.feeder}`,
      snippet: feeder(`${head} feeder`, bearings),
    },
    { label: "spare", kind: "word", detail: `${head}: ${wayKinds.spare}`, text: `${head} spare` },
    ...circuitsByUse(bearings, `${head} `, `${head}: `),
  ];
}

/** Ways by what they are for. `head` is what stands before the kind; nothing where it is written already. */
export const circuitsByUse = (bearings: Bearings, head = "", about?: string): Offer[] =>
  usualCircuits.map(({ use, kind, title }) => ({
    label: kind === "ring" ? "sockets-ring" : use,
    kind: "block",
    detail: `${about ?? `${kind}: `}${title.toLowerCase()}`,
    snippet: circuit(`${head}${kind}`, { ...bearings, kind, uses: new Set([use]) }, title),
  }));

interface UsualCircuit {
  readonly use: Use;
  readonly kind: "ring" | "radial";
  readonly title: string;
}

/** Circuits that are found by what they are for. */
const usualCircuits: readonly UsualCircuit[] = [
  { use: "sockets", kind: "ring", title: "Sockets" },
  { use: "sockets", kind: "radial", title: "Sockets" },
  { use: "lighting", kind: "radial", title: "Lighting" },
  { use: "cooker", kind: "radial", title: "Cooker" },
  { use: "shower", kind: "radial", title: "Shower" },
  { use: "water-heater", kind: "radial", title: "Water heater" },
  { use: "heating", kind: "radial", title: "Heating" },
  { use: "alarms", kind: "radial", title: "Smoke and heat alarms" },
  { use: "appliance", kind: "radial", title: "Appliance" },
  { use: "motor", kind: "radial", title: "Motor" },
];

/** The skeleton of `way`, or of what follows its number and kind where those are written. */
export const wayBody = (head: string, bearings: Bearings): string =>
  bearings.kind === "feeder" ? feeder(head, bearings) : circuit(head, bearings);

function circuit(head: string, bearings: Bearings, title?: string): string {
  const stops = new Stops();
  const kind = bearings.kind === undefined ? ` ${stops.oneOf(["radial", "ring"])}` : "";
  const name = title === undefined ? stops.blank : stops.oneOf([title]);
  const first = `${head}${kind} "${name}"`;
  const isDesign = bearings.stage === "design" || bearings.stage === undefined;
  if (!isDesign) return `${first} {\n\t$0\n}`;
  // Each stop goes with what the others say first: what is laid out is in order before anything is chosen.
  const likely = { ...bearings, kind: bearings.kind ?? "radial", uses: bearings.uses.size > 0 ? bearings.uses : usual };
  return block(first, [
    ...deviceLines(likely, stops),
    `cable flat-twin  line ${stops.oneOf(pairs(likely))} mm²`,
    `route ${stops.oneOf(routes)}`,
    `length ${stops.blank} m`,
    `serves ${bearings.uses.size > 0 ? [...bearings.uses].join(" ") : stops.oneOf(usesFirst)}`,
  ]);
}

const usual: ReadonlySet<Use> = new Set(usesFirst.slice(0, 1));

/** The device most ways of the board have; else the board's RCD before a breaker, or one device for both. */
function deviceLines(bearings: Bearings, stops: Stops): string[] {
  const { usualDevice, rcds, premises } = bearings;
  const curves = curvesFor(bearings);
  const rating = () => stops.oneOf(ratingsFor(bearings).map((amps) => `${curves[0]}${amps}`));
  if (usualDevice) {
    const line = `device ${usualDevice.standard} ${rating()} ${usualDevice.tail}`.trimEnd();
    return rcds.length > 0 && !usualDevice.tail.includes("mA") ? [line, behind(bearings, stops)] : [line];
  }
  if (rcds.length > 0) return [`device BS EN 60898 ${rating()} 6 kA`, behind(bearings, stops)];
  const needsRcd = premises === undefined || !/^(?:industrial|commercial)$/.test(premises);
  return [needsRcd ? `device BS EN 61009 ${rating()} 6 kA 30 mA type A` : `device BS EN 60898 ${rating()} 6 kA`];
}

const behind = ({ rcds }: Bearings, stops: Stops): string =>
  `behind ${stops.oneOf(rcds.map(({ args }) => args.name.value))}`;

/** Line and protective conductor as flat cable is sold. */
const pairs = (bearings: Bearings): string[] => {
  const all = flatPairs.rows.map(({ facts }) => facts.line);
  const cpcs = new Map(flatPairs.rows.map(({ facts }) => [facts.line, facts.cpc]));
  return inFront(all, lineSizesFor(bearings)).map((line) => `${plain(line)} mm²  cpc ${plain(cpcs.get(line) ?? line)}`);
};

const routes: readonly string[] = ["clipped", "ceiling", "wall", "floor"].map(
  (route) => `${route}  method ${methodsFor(route)[0]}`,
);

function feeder(head: string, bearings: Bearings): string {
  const stops = new Stops();
  const title = stops.blank;
  return block(`${head} "${title}"`, [
    `device BS 88-2 ${stops.oneOf(ratingsFor({ ...bearings, kind: "feeder" }).map(String))} A gG`,
    `cable armoured 90 °C  line ${stops.oneOf(["16", "10", "25", "35"])} mm²  cpc-by armour  cores ${stops.oneOf(["3", "2", "4"])}`,
    `route ${stops.oneOf(["tray  method E", "clipped  method C", "buried  method D"])}`,
    `length ${stops.blank} m`,
    `feeds ${stops.blank}`,
  ]);
}

/** A board with what its first lines say. `feeds` are what may feed it, the likeliest first. */
export function boardSkeleton(name: string, feeds: readonly string[]): string {
  const stops = new Stops();
  return `board ${stops.oneOf([name])} "${stops.blank}" {\n\tfed-from     ${stops.oneOf(feeds)}\n\tmain-switch  BS EN 60947-3 ${stops.oneOf(["100", "80", "63", "125"])} A\n\n\t$0\n}`;
}

export function supplySkeleton(): string {
  const stops = new Stops();
  return block("supply", supplyLines(stops));
}

const supplyLines = (stops: Stops): string[] => [
  `earthing ${stops.oneOf(earthingsFirst)}`,
  `Ze ${stops.blank} Ω`,
  `Ipf ${stops.blank} kA`,
  `cutout BS 88-3 ${stops.oneOf(["100", "80", "60"])} A`,
];

/** A whole schedule to begin with, for an empty file. */
export function scheduleSkeleton(): string {
  const stops = new Stops();
  return `wayfile ${languageVersion}

installation "${stops.blank}" {
	standard     ${stops.oneOf(editionsFirst)}
	stage        design
	work         ${stops.oneOf(["new", "addition", "existing"])}
	premises     ${stops.oneOf(["dwelling", "commercial", "industrial", "agricultural", "outbuilding"])}

	supply {
		${supplyLines(stops).map(alignedLine).join("\n\t\t")}
	}

	board A "${stops.blank}" {
		fed-from     supply
		main-switch  BS EN 60947-3 ${stops.oneOf(["100", "80", "63"])} A

		$0
	}
}`;
}

/** Editions as a new schedule would take them: what is in force, then the newest that is not. */
export const editionsFirst: readonly string[] = [
  ...editions.filter(({ inForce }) => inForce),
  ...editions.filter(({ inForce }) => !inForce).slice(-1),
].map(({ id }) => id);

/** The head of a block of tests: the day, and the instrument that was used last. */
export function testsSkeleton(word: string, instruments: readonly string[]): string {
  const stops = new Stops();
  const day = stops.today;
  return `${word} ${day}${instruments.length > 0 ? ` with ${stops.oneOf(instruments)}` : ""} {\n\t$0\n}`;
}

/** Any other block: what its first line must state. */
export function plainSkeleton(
  word: string,
  parts: readonly { label?: string; choices?: Choices; isText: boolean }[],
): string {
  const stops = new Stops();
  const written = parts.map(({ label, choices, isText }) => {
    const stop = choices ? stops.oneOf(Object.keys(choices)) : stops.blank;
    return `${label === undefined ? "" : `${label} `}${isText ? `"${stop}"` : stop}`;
  });
  return `${[word, ...written].join(" ")} {\n\t$0\n}`;
}
