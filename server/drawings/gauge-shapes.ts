/** One scale for every margin: a thin bar from zero to the limit, a tick for what is expected, the reading as a mark. */
import { line, type PlainShape, type Role, rounded } from "./shapes.ts";

/** How a value stands to its limit. `unproven`: beyond one from memory by less than that may be wrong. */
export type Standing = "within" | "unproven" | "beyond";

export interface Gauge {
  /** The value as a share of its limit, 1 on the limit and more beyond it, whichever way the limit runs. */
  readonly used: number;
  /** What is expected, as the same share. */
  readonly expected?: number;
  readonly standing: Standing;
  /** `0.43 Ω of at most 0.54 Ω`. */
  readonly text: string;
  /** `20 % left`, `12 % over`. */
  readonly left: string;
}

/** What is worst comes first: beyond, then unproven, then what leaves least. */
export function tightest<T extends Gauge>(gauges: readonly T[]): T | undefined {
  const weight = ({ standing, used }: Gauge): number =>
    used + (standing === "beyond" ? 1e9 : standing === "unproven" ? 1e6 : 0);
  return gauges.reduce<T | undefined>((worst, one) => (!worst || weight(one) > weight(worst) ? one : worst), undefined);
}

/** The part of a gauge's width that the limit stands at: what is beyond it needs room. */
const limitAt = 0.78;

const standingRoles: Readonly<Record<Standing, Role>> = {
  within: "reading",
  unproven: "unsure",
  beyond: "over",
};

/** The bar, `width` long, with its middle at `y`. */
export function gaugeShapes({ used, expected, standing }: Gauge, x: number, y: number, width: number): PlainShape[] {
  const limit = x + width * limitAt;
  const at = (share: number): number => rounded(x + Math.min(width, Math.max(0, share) * width * limitAt));
  const role = standingRoles[standing];
  return [
    line(x, y, limit, y, "rule", 1),
    line(x, y, at(Math.min(used, 1)), y, "reading", 3),
    ...(used > 1 ? [line(limit, y, at(used), y, role, 7)] : []),
    line(limit, y - 6, limit, y + 6, "limit", 1.5),
    ...(expected === undefined ? [] : [line(at(expected), y - 5, at(expected), y + 5, "expected", 1)]),
    { kind: "circle", x: at(used), y, r: 3.4, role, filled: standing === "within" },
  ];
}
