/** `>` and `<` are for readings beyond a meter's range. A size, a length or a rating is what it is. */
import type { ReadQuantity } from "./quantity.ts";
import type { Slot } from "./row-shape.ts";

export function asFigure([, { accepts }]: Slot, read: ReadQuantity): ReadQuantity {
  if (!("quantity" in read) || read.quantity.sign === "=") return read;
  if (accepts.kind !== "quantity" || accepts.reading) return read;
  const { sign, start, end } = read.quantity;
  const problem = {
    check: "bound-not-read" as const,
    message: `${sign} is for readings that are off scale; here stands the figure itself: ${accepts.help}.`,
    start,
    end,
    fixes: [{ title: `Remove the ${sign}`, edits: [{ start, end: start + 1, text: "" }], safe: false }],
  };
  return { problem };
}
