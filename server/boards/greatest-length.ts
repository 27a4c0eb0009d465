/** How long a circuit may be, and how long its readings say that it is. */
import { reproducible } from "../calc/reproducible.ts";
import { type Calculated, metres, ohms, percent, round, step, worked } from "../calc/result.ts";
import { exactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { designBoardImpedance, designLoop, timesToLimit } from "../readings/loop.ts";
import { combine, differing } from "../tables/source.ts";
import { circuitDrop, dropLimitOf } from "./drop-path.ts";

/**
 * The length (m) at which what grows with it reaches its limit: `used` of the room at the length that is stated. Where runs
 * are written, all of them are taken to grow alike.
 */
function lengthAt(
  study: WayStudy,
  room: number,
  used: number,
): { readonly stated: number; readonly value: number } | undefined {
  const stated = study.length?.value;
  return stated === undefined || used <= 0 ? undefined : { stated, value: Math.max(0, (stated * room) / used) };
}

/** A length (m) that is calculated, in words: no finer than a route is measured. */
export const lengthText = (length: number): string => metres(round(length, 1));

const orNone = (length: number): string => (length > 0 ? lengthText(length) : "none is left");

/** The greatest length (m) at which the device still disconnects in time, conductors hot. */
export function longestByLoop(study: WayStudy): Calculated | undefined {
  const limit = study.disconnection?.limit;
  const start = study.facts.has("earthing") ? undefined : designBoardImpedance(study.context);
  const loop = start && designLoop(study);
  // What an RCD disconnects is as good as never too long for it.
  if (!limit || !start || !loop || study.disconnection?.by !== "overcurrent") return undefined;
  const length = study.length?.value;
  const used = loop.value - start.value;
  if (length === undefined || used <= 0) return undefined;
  const value = Math.max(0, length * timesToLimit(start, loop, limit.value));
  const formula = "l max = l × (limit − loop at the board) / (R1+R2)";
  return worked(value, "m", combine(differing(limit, start), loop.source), () => [
    loop.parts.X > 0
      ? step(formula, `${ohms(limit.value)}, resistance and reactance in proportion to l`, orNone(value))
      : reproducible(
          formula,
          [
            [length, metres],
            [limit.value, ohms],
            [start.value, ohms],
            [used, ohms],
          ],
          timesRoom,
          [value, orNone],
        ),
  ]);
}

/** So many times a length as what it uses goes into what is left. */
const timesRoom = {
  write: (length: string, limit: string, before: string, used: string) =>
    `${length} × (${limit} − ${before}) / ${used}`,
  compute: (length: number, limit: number, before: number, used: number) => (length * (limit - before)) / used,
};

/** The greatest length (m) at which the voltage drop is within its limit, given what is lost before the board, `above` in %. */
export function longestByDrop(study: WayStudy, above: Calculated): Calculated | undefined {
  const found = circuitDrop(study);
  if (!found) return undefined;
  const limit = dropLimitOf(study);
  const at = lengthAt(study, limit.value - above.value, found.drop.value);
  if (!at) return undefined;
  const { stated, value } = at;
  return worked(value, "m", combine(differing(limit, above), found.drop.source), () => [
    reproducible(
      "l max = l × (limit − drop before the board) / own drop",
      [
        [stated, metres],
        [limit.value, percent],
        [above.value, percent],
        [found.drop.value, percent],
      ],
      timesRoom,
      [value, orNone],
    ),
  ]);
}

/** The length (m) of the stated cable that the measured R1+R2 stands for. */
export function lengthOfReading(study: WayStudy): Calculated | undefined {
  const reading = exactReading(study.R1R2);
  const expected = study.greatestR1R2;
  if (!reading || !expected) return undefined;
  const at = lengthAt(study, reading.value, expected.value);
  if (!at) return undefined;
  const { stated, value } = at;
  return worked(value, "m", expected.source, () => [
    reproducible(
      "l = l stated × R1+R2 measured / R1+R2 expected",
      [
        [stated, metres],
        [reading.value, ohms],
        [expected.value, ohms],
      ],
      {
        write: (length, measured, sound) => `${length} × ${measured} / ${sound}`,
        compute: (length, measured, sound) => (length * measured) / sound,
      },
      [value, lengthText],
    ),
  ]);
}
