/** Supply, boards and the edition. */

import { faultCurrent, prospective } from "../../calc/fault-current.ts";
import { totalLoop } from "../../calc/loop-impedance.ts";
import { marginOf } from "../../calc/margin.ts";
import { electrodeAdvice } from "../../calc/rcd-loop-limit.ts";
import { type Calculated, kiloamps, ohms } from "../../calc/result.ts";
import { boardImpedance } from "../../circuit/board-impedance.ts";
import { breakingOf, conditionalAt } from "../../circuit/breaking.ts";
import { studyWay } from "../../circuit/way.ts";
import { numberAt } from "../../model/fact-values.ts";
import type { BoardInPlace, Context, Installation } from "../../model/installation.ts";
import { exact, type Fact, readingAt } from "../../model/values.ts";
import type { Bound } from "../../readings/planned.ts";
import { type Edition, editionOf } from "../../tables/editions.ts";
import { supplyValues } from "../../tables/supply.ts";
import { numberCell } from "../../tables/table.ts";
import { boundRows, type Card, card, limitRow, row, show } from "./card.ts";

export function editionCard(written: string | undefined): Card | undefined {
  const edition: Edition | undefined = written === undefined ? undefined : editionOf(written);
  if (!edition) return undefined;
  return card(
    [
      row("edition", `${edition.name}${edition.inForce ? ", in force" : ", no longer for new work"}`),
      row("for work from", edition.from),
      row("voltage factor Cmin", String(edition.cmin.value)),
      row(
        "judged by",
        edition.takesNumbersFrom && `the figures of ${edition.takesNumbersFrom}, as its own were not seen`,
      ),
    ],
    { steps: [], source: edition.cmin.source },
  );
}

export function zeCard(installation: Installation | undefined, fact: Fact | undefined): Card | undefined {
  const value = exact(readingAt(fact));
  const system = installation?.supply?.one("earthing")?.args.system.value;
  const U0 = installation?.supply?.one("U0")?.args.value.value;
  const found = numberCell(supplyValues, { key: `ze-${system?.toLowerCase()}` }, "value");
  const limit = found && { value: found.value, unit: "Ω", steps: [], source: found.source };
  const fault = value !== undefined && value > 0 && U0 !== undefined ? faultCurrent(U0, value) : undefined;
  if (!limit && !fault) return undefined;
  return card(
    [
      limitRow("declared at most", limit, { value }),
      row("earth fault current there", fault && prospective(fault.value)),
    ],
    limit,
    fault,
  );
}

/** The fault current against the device that can break least, by its mark or by its standard. */
export function faultCard(places: readonly BoardInPlace[], fact: Fact | undefined): Card | undefined {
  const value = exact(readingAt(fact));
  const devices = places.flatMap(({ board, context }) =>
    board.ways.flatMap((way) => {
      const breaking = breakingOf(studyWay(way, context));
      return breaking ? [{ way: way.id, breaking }] : [];
    }),
  );
  const [least] = devices.toSorted((one, other) => one.breaking.value - other.breaking.value);
  if (!least) return undefined;
  const { breaking, way } = least;
  const assembly = Math.min(...places.map(({ context }) => conditionalAt(context) ?? 0));
  const margin = value === undefined ? undefined : marginOf("most", value, breaking.value);
  const rated = margin?.passes === false && value !== undefined && value <= assembly;
  const words = [
    `${kiloamps(breaking.value)}, way ${way}`,
    ...(margin ? [margin.text] : []),
    ...(rated ? [`but the board is rated ${kiloamps(assembly)} as an assembly`] : []),
  ];
  return card([row("least breaking capacity here", words.join(", "))], breaking);
}

/** The size that is asked for of a conductor at the origin. */
export function conductorCard(need: Calculated | undefined, fact: Fact | undefined): Card | undefined {
  if (!need) return undefined;
  const value = numberAt(fact, "size");
  const name = fact ? "at least" : "earthing conductor for it, at least";
  const enough = value === undefined ? "" : value < need.value ? ", which this is not" : ", which this is";
  return card([row(name, `${show(need)}${enough}`)], need);
}

/** `bounds`: what the RCDs that rely on it allow. */
export function electrodeCard(fact: Fact | undefined, bounds: readonly Bound[]): Card {
  const advice = electrodeAdvice();
  const read = { value: exact(readingAt(fact)) };
  return card(
    [...boundRows(bounds, read), limitRow("stable up to", advice, read)],
    ...bounds.map(({ source }) => ({ steps: [], source })),
    advice,
  );
}

/** The loop at a board against that of what feeds it and the feeder between. */
export function boardLoopCard(context: Context, fact: Fact | undefined): Card | undefined {
  const value = exact(readingAt(fact));
  const U0 = context.supply?.one("U0")?.args.value.value;
  const fault = value !== undefined && value > 0 && U0 !== undefined ? faultCurrent(U0, value) : undefined;
  const current = row("earth fault current here", fault && prospective(fault.value));
  const fed = context.board.facts.has("earthing") ? undefined : loopThroughFeeder(context);
  if (!fed) return card([row("at the origin", originOf(context)), current], fault);
  return card([row("expected cold", fed.words), current], fed.expected, fault);
}

/** Of a board that is fed by a way and has no electrode of its own. */
function loopThroughFeeder(context: Context): { readonly expected?: Calculated; readonly words?: string } | undefined {
  const [above, ...further] = context.upstream;
  if (!above?.feeder) return undefined;
  const upstream = { ...context, board: above.board, upstream: further };
  const start = boardImpedance(upstream);
  const feeder = studyWay(above.feeder, upstream);
  const own = exact(feeder.R1R2?.value) ?? feeder.expectedR1R2?.value;
  if (!start || own === undefined) return {};
  const expected = totalLoop(start.value, own, start.name);
  const by = feeder.R1R2 ? "R1+R2 of the feeder" : "R1+R2 of the feeder by its length";
  return { expected, words: `${start.name} above + ${by} = ${show(expected)}` };
}

/** The loop outside, where the board is at the supply and has its earth. */
function originOf({ board, supply }: Context): string | undefined {
  const Ze = exact(supply?.one("Ze")?.args.value);
  const isAtSupply = !board.facts.has("earthing") && board.facts.one("fed-from")?.args.from.value === "supply";
  return Ze === undefined || !isAtSupply ? undefined : `Ze ${ohms(Ze)}`;
}
