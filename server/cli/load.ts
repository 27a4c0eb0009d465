/** A load named on the command line: `--load 28 A`, `--load 6.4kW`. */
import { unitOf } from "../../grammar/units.ts";
import type { Wants } from "../proposal/proposal.ts";

const amountPattern = /^(\d+(?:\.\d+)?)\s*(\p{L}+)$/u;

export function loadOf(text: string): Pick<Wants, "Ib" | "power"> | { readonly failure: string } {
  const [, number = "", spelling = ""] = amountPattern.exec(text.trim()) ?? [];
  const unit = unitOf(spelling);
  const value = Number(number) * (unit?.factor ?? 0);
  if (value > 0 && unit?.physical === "current") return { Ib: value };
  if (value > 0 && unit?.physical === "power") return { power: value };
  return { failure: `A load is a current or a power with its unit, such as 28 A or 6.4 kW; “${text}” is not.` };
}

/** A number and its unit are one value, though a shell hands them over as two. */
export function withLoadInOne(args: readonly string[]): readonly string[] {
  const at = args.indexOf("--load");
  const [number = "", unit = ""] = args.slice(at + 1, at + 3);
  if (at < 0 || !/^[\d.]+$/.test(number) || !unitOf(unit)) return args;
  return [...args.slice(0, at + 1), `${number} ${unit}`, ...args.slice(at + 3)];
}
