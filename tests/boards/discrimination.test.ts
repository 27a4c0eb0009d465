/**
 * Device over device as far as what is published tells: gG fuses by the ratio of their ratings, 1.6 to 1 (BS 88-2, as the
 * makers' lists give it), breakers by their bands, BS EN 60898: type C opens at once from 5 to 10 times its rating.
 */
import { describe, expect, it } from "vitest";
import { ratedParts } from "../../server/boards/board-ratings.ts";
import { discrimination } from "../../server/boards/coordination.ts";
import { designOfBoard } from "../../server/boards/design.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";

const annexe = (feeder: string, devices: readonly string[], board = ""): string => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  premises commercial
  supply {
    earthing TN-S
    cutout BS 88-3 100 A
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      ${feeder}
      feeds B
    }
  }
  board B "Annexe" {
    fed-from A
    ${board}
${devices.map((device, at) => `    way ${at + 1} ${device === "" ? "spare" : `radial "Bench ${at + 1}" {\n      ${device}\n    }`}`).join("\n")}
  }
}`;

describe("a device and those behind it", () => {
  const of = (feeder: string, devices: readonly string[], greatest?: number) => {
    const found = discrimination(nodeOf(installationOf(annexe(`device ${feeder}`, devices)), "B"), greatest);
    return found && [found.kind, found.upTo?.value, found.why];
  };
  const ratio = ["unknown", undefined, "the ratio of the fuses is less than their makers ask"];
  const makers = ["unknown", undefined, "the makers’ tables decide between devices of these kinds"];
  const whole = ["total", undefined, "by the ratio of the fuses"];

  it.each([
    ["BS 88-2 160 A 80 kA gG", ["device BS 88-2 100 A 80 kA gG"], whole],
    ["BS 88-2 160 A 80 kA gG", ["device BS 88-2 100 A 80 kA gG", "device BS 88-2 125 A 80 kA gG"], ratio],
    // 63 over 40 A and 100 over 63 A are rounded figures of the same step.
    ["BS 88-2 63 A 80 kA gG", ["device BS 88-2 40 A 80 kA gG"], whole],
    ["BS 88-2 63 A 80 kA gG", ["device BS 88-3 45 A"], ratio],
    ["BS 88-2 63 A 80 kA gG", ["device BS 88-3 32 A"], whole],
    ["BS 88-2 160 A 80 kA gG", ["device BS 88-2 63 A 80 kA gG", "device BS EN 60898 C32 10 kA"], makers],
    ["BS 88-2 160 A 80 kA gG", ["device BS EN 60898 C32 10 kA"], makers],
    ["BS 1361 80 A", ["device BS 88-3 32 A"], makers],
    // What is just as large is behind it nevertheless: on an overload either may open.
    ["BS 88-2 63 A 80 kA gG", ["device BS 88-2 63 A 80 kA gG"], ratio],
    ["BS 88-2 63 A 80 kA gG", ["device BS EN 60898 C63 10 kA"], makers],
    // Of what is larger than the feeder's another check speaks, and of spares none.
    ["BS 88-2 63 A 80 kA gG", ["device BS 88-2 80 A 80 kA gG"], undefined],
    ["BS 88-2 63 A 80 kA gG", [""], undefined],
  ] as const)("%s over %j", (feeder, devices, wanted) => expect(of(feeder, devices)).toEqual(wanted));

  // Type C63 opens at once from 315 A.
  it.each([
    [undefined, "partial"],
    [315, "total"],
    [316, "partial"],
  ])("C63 over B16, with %s A at the board: %s", (greatest, kind) => {
    expect(of("BS EN 60898 C63 10 kA", ["device BS EN 60898 B16 10 kA"], greatest)?.slice(0, 2)).toEqual([kind, 315]);
  });

  it("is nothing of a board that the supply feeds", () => {
    expect(discrimination(nodeOf(installationOf(annexe("", [])), "A"), 1000)).toBeUndefined();
  });
});

describe("the main switch against what protects it", () => {
  const line = (rating: number, devices: readonly string[], feeder = "device BS 88-2 100 A 80 kA gG") => {
    const text = annexe(feeder, devices, `main-switch BS EN 60947-3 ${rating} A`);
    const found = designOfBoard(nodeOf(installationOf(text), "B")).find(({ title }) => title.startsWith("Main switch"));
    return found && [found.verdict, found.limit?.value, found.reason];
  };
  const two = ["device BS EN 60898 B32 6 kA\nIb 20 A", "device BS EN 60898 B16 6 kA\nIb 10 A"];
  const bySum = "protected by the devices behind it, which together come to no more";
  const byFeeder = "protected by the device of the feeder";

  it.each([
    // 32 + 16 A is 48 A.
    [100, two, ["holds", 100, byFeeder]],
    [63, two, ["holds", 48, bySum]],
    [48, two, ["holds", 48, bySum]],
    [100, [...two, "device BS EN 60898 B63 6 kA\nIb 20 A"], ["holds", 100, byFeeder]],
    // One whose rating nobody knows may be anything.
    [63, [...two, "Ib 5 A"], ["ask", 100, byFeeder]],
  ] as const)("%i A before %j", (rating, devices, wanted) => expect(line(rating, devices)).toEqual(wanted));
});

describe("what of a board has a rating", () => {
  const parts = (board: string, devices: readonly string[]) =>
    ratedParts(nodeOf(installationOf(annexe("device BS 88-2 100 A 80 kA gG", devices, board)), "B")).map(
      ({ name, above, behind }) => [name, above?.rating, behind?.value],
    );
  const two = ["device BS EN 60898 B32 6 kA", "device BS EN 60898 B16 6 kA"];

  it.each([
    ["main-switch BS EN 60947-3 63 A", two, [["the main switch", 100, 48]]],
    // A breaker as main switch keeps itself within its rating, and what is inside within its own.
    ["main-switch BS EN 60898 63 A\nbusbar 80 A", two, [["the busbars", 63, 48]]],
    ["main-switch BS EN 60898 125 A\nbusbar 80 A", two, [["the busbars", 100, 48]]],
    ["busbar 80 A", [...two, ""], [["the busbars", 100, 48]]],
    ["busbar 80 A", [...two, "Ib 5 A"], [["the busbars", 100, undefined]]],
    ["busbar 80 A", [], [["the busbars", 100, undefined]]],
    ["rcd east BS EN 61008 63 A 30 mA type A", [`${two[0]}\nbehind east`, two[1] ?? ""], [["RCD east", 100, 32]]],
  ] as const)("%s before %j", (board, devices, wanted) => expect(parts(board, devices)).toEqual(wanted));
});
