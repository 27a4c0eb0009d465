/** How far a figure from memory may be out: a tenth, or what the printed figures beside it leave it. */
import { expect, it } from "vitest";
import { memory, rowOf, sourceOf, table } from "../../server/tables/table.ts";

interface Size {
  readonly kind: string;
  readonly csa: number;
  readonly amperes: number | null;
}

const share = (before: number | null, own: number, after: number | null, { kind = "a", stated = 0 } = {}) => {
  const of = table<Size>({
    id: "sizes",
    title: "Sizes",
    ref: "Table 1",
    edition: "18th Edition",
    applies: "",
    units: { kind: "", csa: "mm²", amperes: "A" },
    standing: "quoted",
    ...(stated > 0 ? { share: stated } : {}),
    rows: () => [
      { kind, csa: 1, amperes: before },
      memory({ kind: "a", csa: 2, amperes: own }),
      { kind: "a", csa: 4, amperes: after },
    ],
  });
  const row = rowOf(of, { csa: 2 });
  const [found] = (row && sourceOf(of, row, "amperes").remembered) ?? [];
  return found && [found.figure, Number(found.share.toFixed(6))];
};

it.each([
  // Between 10 and 11 A, 10.5 A is out by 5 % at the most; nearer to one of them the other is farther.
  [10, 10.5, 11, {}, 0.05],
  [11, 10.5, 10, {}, 0.05],
  [10, 10.9, 11, {}, 0.09],
  [11, 10.1, 10, {}, 0.089109],
  [10, 10, 11, {}, 0.1],
  [10, 10, 10, {}, undefined],
  // Wide apart, or out of their order, they bound nothing more than is usual; nor does one alone, or of another kind.
  [10, 15, 20, {}, 0.1],
  [10, 12, 11, {}, 0.1],
  [10, 9, 11, {}, 0.1],
  [null, 10.5, 11, {}, 0.1],
  [10, 10.5, null, {}, 0.1],
  [10, 10.5, 11, { kind: "b" }, 0.1],
  // A table may state its own.
  [10, 15, 20, { stated: 0.3 }, 0.3],
  [10, 10.5, 11, { stated: 0.3 }, 0.05],
  [10, 10.5, 11, { stated: 0.02 }, 0.02],
] as const)("%s, %d, %s A, %j: %s", (before, own, after, more, wanted) => {
  expect(share(before, own, after, more)).toEqual(wanted === undefined ? undefined : ["Table 1, a 2 mm²", wanted]);
});
