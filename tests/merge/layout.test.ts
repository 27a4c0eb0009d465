/** What one side laid out otherwise beside a change of its own, in a block that the other changed too. */
import { expect, it } from "vitest";
import { isMerged, merge } from "../../server/merge/merge.ts";
import { textOf } from "../../server/merge/write.ts";

const schedule = (head: string, load: string, length: string) => `wayfile 1
installation "Net loft" {
  board A "Loft" {
    ${head}
      Ib      ${load}
      length  ${length}
    }
  }
}
`;
const marks = { ours: "ours", base: "base", theirs: "theirs", size: 7, style: "merge" } as const;

function mergedText(base: string, ours: string, theirs: string): string {
  const outcome = merge({
    base: { text: base, bom: false },
    ours: { text: ours, bom: false },
    theirs: { text: theirs, bom: false },
  });
  if (!isMerged(outcome)) throw new Error(outcome.unreadable);
  return textOf(outcome, marks);
}

const [plain, wide] = ['way 1 radial "Light" {', 'way  1  radial  "Light"  {'];

it("the head of a block stays as the side that laid it out has it, whichever that is", () => {
  const base = schedule(plain, "5 A", "12 m");
  const [laidOut, other] = [schedule(wide, "5 A", "13 m"), schedule(plain, "6 A", "12 m")];
  const both = schedule(wide, "6 A", "13 m");
  expect(mergedText(base, laidOut, other)).toBe(both);
  expect(mergedText(base, other, laidOut)).toBe(both);
});
