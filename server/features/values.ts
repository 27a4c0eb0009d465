/** Values that may fill one argument: choices, names in scope, and the sizes and ratings that are made. */
import { constructions, oldTypes, roughTimes, routeKinds } from "../../grammar/choices.ts";
import type { NameKind, Param } from "../../grammar/params.ts";
import type { QuantityName } from "../../grammar/quantities.ts";
import { insulationRule } from "../calc/insulation.ts";
import { ratings, residuals, sizes } from "../calc/minimum-size.ts";
import { plain } from "../calc/result.ts";
import { normalStandard } from "../model/token-values.ts";
import { pages } from "../rules/frame/catalogue.ts";
import type { Segment } from "../syntax/segment.ts";
import { breakingCapacities } from "../tables/devices.ts";
import { editions } from "../tables/editions.ts";
import { familyOf } from "../tables/standard-values.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Bearings } from "./bearings.ts";
import { type CursorContext, installationAt } from "./cursor.ts";
import { boardsIn, definedNames } from "./names.ts";
import type { HalfLine, Offer } from "./offers.ts";
import { editionsFirst, nextNumber } from "./skeletons.ts";
import {
  breakingFirst,
  constructionsFor,
  cpcSizesFor,
  curvesFor,
  devicesFor,
  earthingsFirst,
  inFront,
  lineSizesFor,
  methodsFor,
  multiples,
  ratingsFor,
  rcdTypesFirst,
  residualsFirst,
  routesFirst,
  switchRatings,
  usesFirst,
} from "./trade-order.ts";

/** What is asked for: values at a place of a line that is half written. */
interface Request {
  readonly snapshot: Snapshot;
  readonly spotted: CursorContext;
  readonly half: HalfLine;
  readonly bearings: Bearings;
}

export function valuesFor(request: Request, [name, { accepts }]: readonly [string, Param]): Offer[] {
  const { snapshot, spotted, half, bearings } = request;
  switch (accepts.kind) {
    case "choice":
      return choiceOffers(request, name, accepts.choices);
    case "ref":
      return [
        ...Object.entries(accepts.builtin ?? {}).map(([label, detail]): Offer => ({ label, kind: "name", detail })),
        ...nameOffers(snapshot, spotted, accepts.names),
      ];
    case "define":
      return accepts.names === "way"
        ? [{ label: nextNumber(bearings, spotted.segment), kind: "value", detail: "the next way" }]
        : [];
    case "standard":
      return accepts.of === "wiring" ? editionOffers() : productOffers(half.word?.image ?? "", bearings);
    case "shorthand":
      return isBreaker(half) ? shorthandOffers(bearings) : [];
    case "quantity":
      return figures(request, accepts.of, name).map((label) => ({ label, kind: "value" }));
    case "multiple":
      return multiples.map((label) => ({ label, kind: "value", detail: "of the rated residual current" }));
    case "rule":
      return ruleOffers(snapshot, spotted);
    case "roughTime":
      return Object.entries(roughTimes).map(([label, detail]) => ({ label, kind: "choice", detail }));
    case "path":
      return nameOffers(snapshot, spotted, "point");
    default:
      return [];
  }
}

function choiceOffers({ half, bearings }: Request, name: string, choices: Readonly<Record<string, string>>): Offer[] {
  if (choices === oldTypes && !standardOf(half)?.includes("3871")) return [];
  const open = Object.keys(choices).filter(
    (label) => !half.before.some(({ image }) => image === label) && fitsDevice(label, half),
  );
  return choicesFirst(open, name, half, bearings).map((label) => ({
    label,
    kind: "choice",
    detail: choices[label] ?? "",
  }));
}

function wayAndBoardAt(snapshot: Snapshot, { segment }: CursorContext) {
  const board = boardsIn(snapshot).find(({ segments }) => segments.includes(segment));
  return { board, way: board?.ways.find((way) => way.segment === segment) };
}

function nameOffers(snapshot: Snapshot, spotted: CursorContext, kind: NameKind): Offer[] {
  const { board, way } = wayAndBoardAt(snapshot, spotted);
  const names = definedNames(snapshot, kind, board, way);
  // No board feeds itself.
  const others = kind === "board" ? names.filter(({ name }) => name.value !== board?.head.name) : names;
  return others.map(({ name, fact }) => ({
    label: name.value,
    kind: "name",
    detail: titleOf(fact.segment.text.slice(fact.start, fact.end)),
  }));
}

/** The first line of a definition. */
const titleOf = (text: string): string => (text.split(/[\r\n{]/)[0] ?? "").trim().replace(/[ \t]+/g, " ");

/** The class of a fuse is none of a breaker, which may be back-up protected all the same. */
const fitsDevice = (label: string, half: HalfLine): boolean =>
  !(label === "gG" || label === "gM") || !isBreaker(half) || standardOf(half) === undefined;

/** A closed list in the order of the trade, where it has one. */
function choicesFirst(labels: readonly string[], param: string, half: HalfLine, bearings: Bearings): string[] {
  const word = half.word?.image;
  if (word === "route" && param === "method") {
    const route = half.before.map(({ image }) => image).find((image) => Object.hasOwn(routeKinds, image));
    return inFront(labels, methodsFor(route));
  }
  if (word === "route" && param === "kind") return inFront(labels, routesFirst);
  if (param === "construction") return inFront(labels, constructionsFor(bearings));
  if (word === "serves") return inFront(labels, [...bearings.uses, ...usesFirst]);
  if (param === "type" || word === "tests") return inFront(labels, rcdTypesFirst);
  if (word === "earthing") return inFront(labels, earthingsFirst);
  if (word === "way" && param === "kind") return inFront(labels, ["radial", "ring"]);
  return [...labels];
}

const editionOffers = (): Offer[] =>
  inFront(
    editions.toReversed(),
    editionsFirst.flatMap((id) => editions.find((edition) => edition.id === id) ?? []),
  ).map(({ id, name, inForce }) => ({ label: id, kind: "value", detail: inForce ? name : `${name}, withdrawn` }));

/** The standards that stand on what a word describes, the present ones first. */
const products: Readonly<Record<string, readonly string[]>> = {
  device: ["BS EN 60898", "BS EN 61009", "BS EN 60947-2", "BS 88-2", "BS 88-3", "BS 3036", "BS 1361", "BS 3871"],
  rcd: ["BS EN 61008", "BS EN 61009", "BS EN 62423", "BS 4293"],
  "main-switch": ["BS EN 60947-3", "BS EN 61008", "BS EN 60898"],
  cutout: ["BS 88-3", "BS 1361", "BS 3036"],
  afdd: ["BS EN 62606"],
};

/** What a standard is of, and what that is called on site. Nobody thinks of a breaker by its number; a withdrawn
 * one is found by that alone, or it would stand first where it is nearest in letters. */
const productWords: Readonly<Record<string, readonly [string, ...string[]]>> = {
  "BS EN 60898": ["circuit-breaker", "mcb", "breaker"],
  "BS EN 61009": ["RCD and circuit-breaker in one", "rcbo"],
  "BS EN 60947-2": ["moulded-case or air circuit-breaker", "mccb", "acb", "breaker"],
  "BS EN 60947-3": ["switch-disconnector", "isolator", "switch"],
  "BS EN 61008": ["RCD without overcurrent protection", "rcd", "rccb"],
  "BS EN 62423": ["RCD of type B or F", "rcd"],
  "BS 7288": ["socket-outlet or connection unit with RCD", "srcd", "rcd socket"],
  "BS EN 62606": ["arc fault detection device", "afdd"],
  "BS 88-2": ["fuse, bolted or clipped in", "fuse", "hrc"],
  "BS 88-3": ["cartridge fuse", "fuse", "hrc"],
  "BS 3036": ["rewirable fuse", "fuse", "rewirable", "wire"],
  "BS 1361": ["cartridge fuse, withdrawn"],
  "BS 3871": ["circuit-breaker, withdrawn"],
  "BS 4293": ["RCD, withdrawn"],
};

const productOffers = (word: string, bearings: Bearings): Offer[] =>
  inFront(products[word] ?? [], word === "device" ? devicesFor(bearings) : []).map((label): Offer => {
    const [detail, ...aliases] = productWords[label] ?? [];
    return { label, kind: "value", aliases, ...(detail === undefined ? {} : { detail }) };
  });

/** The standard that stands on the line already. */
export function standardOf({ before, after }: HalfLine): string | undefined {
  const token = [...before, ...after].find(({ tokenType }) => tokenType.name === "Standard");
  return token && normalStandard(token.image);
}

function isBreaker(half: HalfLine): boolean {
  const standard = standardOf(half);
  return standard === undefined || familyOf(standard) === "breaker";
}

/** Types and ratings that are made, those of the use first: B32 before B1 for sockets. */
const shorthandOffers = (bearings: Bearings): Offer[] =>
  curvesFor(bearings).flatMap((curve) =>
    inFront(ratings("breaker"), ratingsFor(bearings)).map(
      (rating): Offer => ({ label: `${curve}${rating}`, kind: "value" }),
    ),
  );

/** Figures of a quantity that the argument `param` of a line may usually hold, with their unit. */
function figures({ snapshot, spotted, half, bearings }: Request, of: QuantityName, param: string): string[] {
  const word = half.word?.image ?? "";
  const standard = standardOf(half);
  switch (of) {
    case "csa": {
      const made = sizes.filter((size) => size >= 1);
      return inFront(made, sizesFor(word, param, half, bearings)).map((size) => `${size} mm²`);
    }
    case "rating":
      return ratingsOf(word, standard, bearings).map((rating) => `${rating} A`);
    case "sensitivity":
      return sensitivities(standard).map((residual) => `${residual} mA`);
    case "breaking":
      return breakings(standard !== undefined && familyOf(standard) === "breaker" ? "BS EN 60898" : standard);
    case "size":
      return word !== "route" || half.before.some(({ image }) => image === "conduit")
        ? ["20 mm", "25 mm", "32 mm", "40 mm", "50 mm"]
        : [];
    case "testVoltage": {
      const edition = installationAt(snapshot, spotted.segment)?.edition;
      if (!edition) return [];
      const kinds = ["up-to-500", "selv-pelv", "above-500"] as const;
      return kinds.map((kind) => `${plain(insulationRule(kind, edition).testVoltage.value)} V`);
    }
    default:
      return [];
  }
}

/** In A; nothing for a breaker, whose rating stands behind its letter. */
function ratingsOf(word: string, standard: string | undefined, bearings: Bearings): readonly number[] {
  if (word === "main-switch" || word === "busbar") return switchRatings;
  if (word === "rcd") return inFront(switchRatings, [63, 80, 40]);
  if (word === "cutout") return [100, 80, 60];
  const family = standard === undefined ? undefined : familyOf(standard);
  return family === undefined || family === "breaker" ? [] : inFront(ratings(family), ratingsFor(bearings));
}

/** In mA. A circuit-breaker or a switch without an RCD in it has none. */
function sensitivities(standard: string | undefined): readonly number[] {
  if (standard && /60898|60947-3|88|3036|1361|3871/.test(standard)) return [];
  const made = residuals.map((residual) => Number(plain(residual * 1000)));
  return inFront(made, residualsFirst);
}

const breakings = (standard: string | undefined): string[] =>
  inFront(
    breakingCapacities.rows
      .filter(({ facts }) => facts.standard === standard && facts.category === null)
      .map(({ facts }) => facts.icn),
    breakingFirst,
  ).map((icn) => `${icn} kA`);

/** The size that would be looked for, by what it is the size of. */
function sizesFor(word: string, param: string, half: HalfLine, bearings: Bearings): readonly number[] {
  if (word === "tails") return [25, 16, 35];
  if (word === "earthing-conductor") return [16, 10, 25, 6];
  if (word === "bonding") return [10, 6, 16];
  if (word === "supplementary-bonding") return [4, 2.5, 6];
  if (param !== "cpc") return lineSizesFor(bearings);
  const images = half.before.map(({ image }) => image);
  const line = Number.parseFloat(images[images.indexOf("line") + 1] ?? "");
  const construction = images.find((image) => Object.hasOwn(constructions, image));
  return cpcSizesFor(construction, Number.isNaN(line) ? undefined : line);
}

/** A file of so many parts is checked before anybody waits for it; of a larger one what is found already counts. */
const fewSegments = 1_000;

/** The checks that find something here, on this board, and elsewhere, the nearest first. */
function foundNear(snapshot: Snapshot, spotted: CursorContext): string[] {
  const { board } = wayAndBoardAt(snapshot, spotted);
  const isFew = snapshot.file.document.segments.length <= fewSegments;
  const found = isFew ? snapshot.findings : (snapshot.soFar ?? []);
  const near = ({ segment }: { readonly segment: Segment }): number =>
    segment === spotted.segment ? 0 : board?.segments.includes(segment) ? 1 : 2;
  return found.toSorted((one, other) => near(one.spot) - near(other.spot)).map(({ check }) => check);
}

function ruleOffers(snapshot: Snapshot, spotted: CursorContext): Offer[] {
  const clauses = new Map<string, string>();
  for (const { clauses: own, title } of pages)
    for (const clause of own) if (!clauses.has(clause)) clauses.set(clause, title);
  const departable = pages.filter(({ id }) => !id.startsWith("language/") && !id.startsWith("check/"));
  const ids = inFront(
    departable.map(({ id }) => id),
    foundNear(snapshot, spotted),
  );
  const titles = new Map(departable.map(({ id, title }) => [id, title]));
  return [
    ...ids.map((id): Offer => ({ label: id, kind: "value", detail: titles.get(id) ?? "" })),
    ...[...clauses].map(([label, detail]): Offer => ({ label, kind: "value", detail })),
  ];
}
