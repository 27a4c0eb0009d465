/** What a household cooker draws: its rings and oven are never all on for long. */

import type { Use } from "../../grammar/choices.ts";
import { diversified } from "../calc/diversity.ts";
import type { Calculated } from "../calc/result.ts";
import type { Context } from "../model/installation.ts";
import { columnOf } from "./diversity-column.ts";
import { premisesOf } from "./supply.ts";

export interface Served {
  readonly uses: ReadonlySet<Use>;
  readonly context: Context;
}

/** A circuit that serves a cooker and at most the socket in its control unit. */
const servesCooker = ({ uses }: Pick<Served, "uses">): boolean =>
  uses.has("cooker") && uses.size === (uses.has("sockets") ? 2 : 1);

/** A building of flats: its demand as a whole has no column, and each of its kitchens is a household's. */
const ofFlats = "tall-residential";

/** The design current of a cooker in a home by the published allowance; nothing where that does not hold. */
export function cookerCurrent(study: Served, full: number): Calculated | undefined {
  const premises = premisesOf(study.context);
  const household = columnOf(premises) === "household" || premises === ofFlats;
  if (!servesCooker(study) || !household) return undefined;
  const socket = study.uses.has("sockets");
  const found = diversified({ purpose: "cookers", column: "household", currents: [full], socket });
  return found.value < full ? found : undefined;
}

/** A cooker of which nobody knows whether it stands in a home: its loads alone do not say what it draws. */
export const cookerUnjudged = (study: Served): boolean =>
  servesCooker(study) && premisesOf(study.context) === undefined;
