/** The status item says of a way what the editor marks in it, and nothing else. */
import { expect, it } from "vitest";
import { checkOf, shownOf } from "../../client/shown.ts";

const mark = (check: string, line: number) => ({ code: { value: check }, range: { start: { line } } });

it("a finding counts where its mark is shown", () => {
  const findings = [
    { check: "loop/zs-over-limit", mark: { line: 4 } },
    { check: "language/unknown-word", mark: { line: 7 } },
  ];
  expect(shownOf(findings, [mark("loop/zs-over-limit", 4)])).toEqual(findings.slice(0, 1));
  expect(shownOf(findings, [mark("loop/zs-over-limit", 5), mark("language/unknown-word", 4)])).toEqual([]);
  expect(shownOf(findings, [])).toEqual([]);
});

it.each([
  [undefined, ""],
  ["a/b", "a/b"],
  [7, "7"],
  [{ value: "a/b" }, "a/b"],
])("a mark names its check: %j", (code, check) => {
  expect(checkOf(code)).toBe(check);
});
