/** What is reported of a line that was read to its end and lacks something. */
import type { IToken } from "chevrotain";
import { endOf } from "../../grammar/lexer.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { listed } from "../text/words.ts";
import type { LineBeingRead } from "./line.ts";
import { figureTakenForName } from "./not-a-name.ts";
import type { Fix, Problem } from "./problems.ts";
import { problemAt } from "./refusals.ts";
import type { Slot } from "./row-shape.ts";
import { isAbsent } from "./values.ts";

/** Of more words than these none is offered by itself. */
const mostOffered = 4;

/** What a line that was read to its end lacks; nothing if it is whole. */
export function missingFrom(line: LineBeingRead): Problem | undefined {
  const { word, row, shape, args } = line;
  const missing = shape.slots.filter(([name, param]) => !param.optional && args[name] === undefined);
  if (missing.length === 0) return row.params.power && row.figures === "load" ? loadWithoutFigure(line) : undefined;
  const bare = figureTakenForName(line, missing);
  if (bare) return bare;
  const known = notTested(line, missing) ?? standardNotStated(line, missing);
  if (known) return known;
  const wanted = missing.map(([, { label, accepts }]) => (label ? `“${label}” and ${accepts.help}` : accepts.help));
  const example = row.example.split("\n")[0]?.replace(/ ?\{$/, "");
  const message = `“${word.image}” needs ${listed(wanted)}, as in: ${example}`;
  return problemAt("missing-argument", message, word, choicesFor(word, missing));
}

/** `load "Kiln"`: what a load is comes to nothing without what it takes. */
function loadWithoutFigure({ word, row, args }: LineBeingRead): Problem | undefined {
  if (args.power || args.current) return undefined;
  return problemAt("missing-argument", `“${word.image}” needs its power or its current, as in: ${row.example}`, word);
}

/** `device B32`: of what is made so today there are two, and the residual current tells them apart. */
function standardNotStated({ word, args }: LineBeingRead, missing: readonly Slot[]): Problem | undefined {
  const [only, ...others] = missing;
  const { curve } = args;
  if (others.length > 0 || only?.[1].accepts.kind !== "standard" || !curve || !("curve" in curve)) return undefined;
  const standard = args.sensitivity ? "BS EN 61009" : "BS EN 60898";
  const label = `${curve.curve}${curve.rating}`;
  const message = `“${word.image}” needs the standard that is on the device, as in: ${word.image} ${standard} ${label}`;
  const edits = [{ start: endOf(word), end: endOf(word), text: ` ${standard}` }];
  return problemAt("missing-argument", message, word, [{ title: `Write ${standard}`, edits, safe: false }]);
}

/** `insulation LIM "Lamps in"`: how the test would be made is stated of one that was not made too. */
function notTested({ word, row, args }: LineBeingRead, missing: readonly Slot[]): Problem | undefined {
  const [only, ...others] = missing;
  const accepts = only?.[1].accepts;
  const written = Object.values(args).flat();
  const absent = written.find((value) => isAbsent(value));
  if (others.length > 0 || accepts?.kind !== "quantity" || !absent || !written.every((value) => isAbsent(value)))
    return undefined;
  const usual = exampleOf(accepts.of, row.example);
  if (usual === undefined) return undefined;
  const message = `“${word.image}” states ${accepts.help} of a test that was not made too: ${word.image} ${usual} ${absent.absent}`;
  const edits = [{ start: endOf(word), end: endOf(word), text: ` ${usual}` }];
  return problemAt("missing-argument", message, word, [{ title: `Write ${usual}`, edits, safe: false }]);
}

/** The first figure of its kind in an example: `500 V`. */
const exampleOf = (of: QuantityName, example: string): string | undefined => {
  const { units }: { readonly units: readonly string[] } = quantities[of];
  return units.flatMap((unit) => new RegExp(`\\d+(?:\\.\\d+)? ${unit}(?![\\p{L}\\d])`, "u").exec(example) ?? [])[0];
};

/** Where one word of a short list is all that is missing, and it is no result of a test. */
function choicesFor(word: IToken, [only, ...others]: readonly Slot[]): Fix[] {
  const { accepts, label } = only?.[1] ?? {};
  if (others.length > 0 || label !== undefined || accepts?.kind !== "choice" || accepts.absent) return [];
  const words = Object.keys(accepts.choices);
  const at = endOf(word);
  if (words.length > mostOffered) return [];
  return words.map((one) => ({
    title: `Write ${one}`,
    edits: [{ start: at, end: at, text: ` ${one}` }],
    safe: false,
  }));
}
