/** What a line says whatever it is written like: amounts in base units, arguments by their names. */
import type { BoundArguments } from "../model/arguments.ts";
import type { AnyValue } from "../model/values.ts";

export interface Sense {
  readonly text: string;
  /** Unit and decimals of each amount: within one unit, how finely it was read is part of a reading. */
  readonly written: readonly string[];
}

export function senseOf(bound: BoundArguments, comment: string, opens: boolean): Sense {
  const { args, provenance, record, corrections } = bound;
  const names = Object.keys(args).sort();
  const values = names.flatMap((name) => [args[name] ?? []].flat());
  const said = names.map((name) => `${name}=${[args[name] ?? []].flat().map(amountText).join("+")}`);
  const was = corrections.map((one) => `was ${one.was} ${JSON.stringify(one.why)}`);
  return {
    text: [...said, provenance, record ?? "", ...was, opens ? "{" : "", comment].join(" "),
    written: values.flatMap(writtenOf),
  };
}

/** Whether two lines say the same, though one has 0.41 Ω and the other 410 mΩ. 0.4 Ω and 0.40 Ω are not the same. */
export const isSameSense = (a: Sense | undefined, b: Sense | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.text === b.text &&
  a.written.every((one, index) => {
    const other = b.written[index] ?? "";
    return one === other || unitOf(one) !== unitOf(other);
  });

const unitOf = (written: string): string => written.replace(/ .*/, "");

function writtenOf(value: AnyValue): string[] {
  if ("legs" in value) return value.legs.map(({ length }) => `${length.unit} ${length.decimals}`);
  return "sign" in value ? [`${value.unit} ${value.decimals}`] : [];
}

export function amountText(value: AnyValue): string {
  if ("absent" in value) return `${value.absent}${value.why === undefined ? "" : JSON.stringify(value.why)}`;
  if ("curve" in value) return `${value.curve}${value.rating}`;
  if ("legs" in value)
    return [value.from.value, ...value.legs.flatMap(({ length, to }) => [amountText(length), to.value])].join(" ");
  if ("sign" in value) return `${value.sign}${Number(value.value.toPrecision(12))}`;
  return typeof value.value === "string" && /\s|^$/.test(value.value)
    ? JSON.stringify(value.value)
    : String(value.value);
}
