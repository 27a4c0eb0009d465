/** Supply, boards and the edition. */
import { earthings } from "../../grammar/choices.ts";
import { faultCurrent } from "../calc/index.ts";
import { kiloamps } from "../calc/result.ts";
import type { Board } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import { exact, type Fact, type Reading } from "../model/values.ts";
import { type Edition, editionOf } from "../tables/editions.ts";
import { supplyValues } from "../tables/supply.ts";
import { numberAt } from "../tables/table.ts";
import { type Card, card, limitRow, row } from "./card.ts";

export function editionCard(written: string | undefined): Card | undefined {
  const edition: Edition | undefined = written === undefined ? undefined : editionOf(written);
  if (!edition) return undefined;
  return card(
    [
      row("edition", `${edition.name}${edition.inForce ? ", in force" : ", no longer for new work"}`),
      row("for work from", edition.from),
      row("Cmin", String(edition.cmin.value)),
      row("rests on", edition.takesNumbersFrom && `the figures of ${edition.takesNumbersFrom}`),
    ],
    { steps: [], source: edition.cmin.source },
  );
}

export function zeCard(installation: Installation | undefined, fact: Fact | undefined): Card | undefined {
  const value = exact(fact?.args.value as Reading | undefined);
  const system = installation?.supply?.one("earthing")?.args.system.value;
  const U0 = installation?.supply?.one("U0")?.args.value.value;
  const found = numberAt(supplyValues, { key: `ze-${system?.toLowerCase()}` }, "value");
  const limit = found && { value: found.value, unit: "Ω", steps: [], source: found.source };
  const fault = value !== undefined && value > 0 && U0 !== undefined ? faultCurrent(U0, value) : undefined;
  if (!limit && !fault) return undefined;
  return card(
    [
      row("earthing", system && `${system}: ${earthings[system]}`),
      limitRow("declared at most", limit, { value }),
      row("earth fault current there", fault && kiloamps(fault.value)),
    ],
    limit,
    fault,
  );
}

/** The fault current against the device that can break least. */
export function faultCard(boards: readonly Board[], fact: Fact | undefined): Card | undefined {
  const value = exact(fact?.args.value as Reading | undefined);
  const devices = boards.flatMap(({ ways }) =>
    ways.flatMap((way) => {
      const breaking = way.facts.one("device")?.args.breaking?.value;
      return breaking === undefined ? [] : [{ way: way.id, breaking }];
    }),
  );
  const least = devices.reduce<(typeof devices)[number] | undefined>(
    (weakest, one) => (!weakest || one.breaking < weakest.breaking ? one : weakest),
    undefined,
  );
  if (!least) return undefined;
  const verdict = value === undefined ? "" : value <= least.breaking ? ", which is enough" : ", which is not enough";
  return card([row("least breaking capacity here", `${kiloamps(least.breaking)}, way ${least.way}${verdict}`)]);
}
