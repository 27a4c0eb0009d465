/** Values that may fill one argument: choices, names in scope, and the sizes and ratings that are made. */
import { oldTypes, roughTimes } from "../../grammar/choices.ts";
import type { Accepts, NameKind, Param } from "../../grammar/params.ts";
import type { QuantityName } from "../../grammar/quantities.ts";
import { insulationRule, ratings, residuals, sizes } from "../calc/index.ts";
import { plain } from "../calc/result.ts";
import { normalStandard } from "../model/token-values.ts";
import { pages } from "../rules/frame/catalogue.ts";
import { breakingCapacities } from "../tables/devices.ts";
import { editions } from "../tables/editions.ts";
import { familyOf } from "../tables/standard-values.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type CursorContext, installationAt } from "./cursor.ts";
import { boardsIn, definedNames } from "./names.ts";
import type { HalfLine, Offer } from "./offers.ts";

export function valuesFor(
  snapshot: Snapshot,
  spotted: CursorContext,
  half: HalfLine,
  [, { accepts }]: readonly [string, Param],
): Offer[] {
  switch (accepts.kind) {
    case "choice":
      if (accepts.choices === oldTypes && !half.before.some(({ image }) => image.includes("3871"))) return [];
      return Object.entries(accepts.choices)
        .filter(([label]) => !half.before.some(({ image }) => image === label))
        .map(([label, detail]) => ({ label, kind: "choice", detail }));
    case "ref":
      return [
        ...Object.entries(accepts.builtin ?? {}).map(([label, detail]): Offer => ({ label, kind: "name", detail })),
        ...nameOffers(snapshot, spotted, accepts.names),
      ];
    case "define":
      return accepts.names === "way" ? nextWay(snapshot, spotted) : [];
    case "standard":
      return accepts.of === "wiring" ? editionOffers() : productOffers(half.word?.image ?? "");
    case "shorthand":
      return isBreaker(half) ? shorthandOffers() : [];
    case "quantity":
      return quantityOffers(snapshot, spotted, half, accepts);
    case "rule":
      return ruleOffers();
    case "roughTime":
      return Object.entries(roughTimes).map(([label, detail]) => ({ label, kind: "choice", detail }));
    case "path":
      return nameOffers(snapshot, spotted, "point");
    default:
      return [];
  }
}

function wayAndBoardAt(snapshot: Snapshot, { segment }: CursorContext) {
  const board = boardsIn(snapshot).find(({ segments }) => segments.includes(segment));
  return { board, way: board?.ways.find((way) => way.segment === segment) };
}

function nameOffers(snapshot: Snapshot, spotted: CursorContext, kind: NameKind): Offer[] {
  const { board, way } = wayAndBoardAt(snapshot, spotted);
  return definedNames(snapshot, kind, board, way).map(({ name, fact }) => ({
    label: name.value,
    kind: "name",
    detail: titleOf(fact.segment.text.slice(fact.start, fact.end)),
  }));
}

/** The first line of a definition. */
const titleOf = (text: string): string => (text.split(/[\r\n{]/)[0] ?? "").trim().replace(/[ \t]+/g, " ");

/** The number after the highest that is taken. */
function nextWay(snapshot: Snapshot, spotted: CursorContext): Offer[] {
  const { board } = wayAndBoardAt(snapshot, spotted);
  const taken = (board?.ways ?? []).filter(({ segment }) => segment !== spotted.segment).map(({ id }) => Number(id));
  const next = Math.max(0, ...taken.filter((id) => Number.isInteger(id))) + 1;
  return [{ label: String(next), kind: "value", detail: "the next way" }];
}

const editionOffers = (): Offer[] =>
  editions
    .toReversed()
    .map(({ id, name, inForce }) => ({ label: id, kind: "value", detail: inForce ? name : `${name}, withdrawn` }));

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
  "BS EN 62606": ["arc fault detection device", "afdd"],
  "BS 88-2": ["fuse, bolted or clipped in", "fuse", "hrc"],
  "BS 88-3": ["cartridge fuse", "fuse", "hrc"],
  "BS 3036": ["rewirable fuse", "fuse", "rewirable", "wire"],
  "BS 1361": ["cartridge fuse, withdrawn"],
  "BS 3871": ["circuit-breaker, withdrawn"],
  "BS 4293": ["RCD, withdrawn"],
};

const productOffers = (word: string): Offer[] =>
  (products[word] ?? []).map((label): Offer => {
    const [detail, ...aliases] = productWords[label] ?? [];
    return { label, kind: "value", aliases, ...(detail === undefined ? {} : { detail }) };
  });

/** The standard that stands on the line already. */
function standardOf({ before, after }: HalfLine): string | undefined {
  const token = [...before, ...after].find(({ tokenType }) => tokenType.name === "Standard");
  return token && normalStandard(token.image);
}

function isBreaker(half: HalfLine): boolean {
  const standard = standardOf(half);
  return standard === undefined || familyOf(standard) === "breaker";
}

const shorthandOffers = (): Offer[] =>
  (["B", "C", "D"] as const).flatMap((curve) =>
    ratings("breaker").map((rating): Offer => ({ label: `${curve}${rating}`, kind: "value" })),
  );

function quantityOffers(
  snapshot: Snapshot,
  spotted: CursorContext,
  half: HalfLine,
  { of }: Extract<Accepts, { kind: "quantity" }>,
): Offer[] {
  return figures(snapshot, spotted, half, of).map((label): Offer => ({ label, kind: "value" }));
}

function figures(snapshot: Snapshot, spotted: CursorContext, half: HalfLine, of: QuantityName): string[] {
  const standard = standardOf(half);
  const family = standard === undefined ? undefined : familyOf(standard);
  switch (of) {
    case "csa":
      return sizes.filter((size) => size >= 1).map((size) => `${size} mm²`);
    case "rating":
      return family === undefined || family === "breaker" ? [] : ratings(family).map((rating) => `${rating} A`);
    case "sensitivity":
      return residuals.map((residual) => `${plain(residual * 1000)} mA`);
    case "breaking":
      return breakings(family === "breaker" ? "BS EN 60898" : standard);
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

const breakings = (standard: string | undefined): string[] =>
  breakingCapacities.rows
    .filter(({ facts }) => facts.standard === standard && facts.category === null)
    .map(({ facts }) => `${facts.icn} kA`);

function ruleOffers(): Offer[] {
  const clauses = new Map<string, string>();
  for (const { clauses: own, title } of pages)
    for (const clause of own) if (!clauses.has(clause)) clauses.set(clause, title);
  const departable = pages.filter(({ id }) => !id.startsWith("language/") && !id.startsWith("check/"));
  return [
    ...departable.map(({ id, title }): Offer => ({ label: id, kind: "value", detail: title })),
    ...[...clauses].map(([label, detail]): Offer => ({ label, kind: "value", detail })),
  ];
}
