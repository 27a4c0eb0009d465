import { describe, expect, it } from "vitest";
import { blankSnippet, blankTests } from "../../server/features/blanks.ts";
import { format } from "../../server/format/format.ts";
import { loft, openSample } from "../helpers/cursor.ts";
import { findingsOf } from "../helpers/sample.ts";

async function filled(text: string, way: string): Promise<string | undefined> {
  const { snapshot } = await openSample(text);
  const segment = snapshot.file.document.segments.find((one) => one.text.includes(`way ${way} `));
  const edit = segment && blankTests(snapshot, segment);
  if (!segment || !edit) return undefined;
  const at = text.indexOf(segment.text) + edit.start;
  return text.slice(0, at) + edit.text + text.slice(at);
}

const added = (before: string, after = ""): string =>
  after
    .split("\n")
    .filter((line) => line.trim().startsWith("#") && !before.includes(line))
    .join("\n");

describe("tests ready to fill", () => {
  it("are comments with what each should read", async () => {
    expect(added(loft, await filled(loft, "5"))).toMatchInlineSnapshot(`
      "      # To be filled: take the # away, write the day and the readings.
            # dead DATE {
            #   R1+R2 … Ω                                    # expected 0.54 Ω, at most 5.40 Ω cold
            #   insulation 500 V L-N … MΩ L-E … MΩ N-E … MΩ  # at least 1 MΩ
            #   polarity …
            # }
            # live DATE {
            #   Zs … Ω             # expected 0.96 Ω, at most 5.82 Ω cold
            #   rcd 30 mA 1x … ms  # at most 300 ms
            #   test-button …
            #   function …
            # }"
    `);
  });

  it("are lines with stops for an editor that has them: the day and the instrument once, no reading", async () => {
    const { snapshot } = await openSample(loft);
    const segment = snapshot.file.document.segments.find((one) => one.text.includes("way 5 "));
    expect(segment && blankSnippet(snapshot, segment)?.text).toMatchInlineSnapshot(`
      "      dead \${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} with \${2:M1} {
              R1+R2 \${3} Ω                                    # expected 0.54 Ω, at most 5.40 Ω cold
              insulation 500 V L-N \${4} MΩ L-E \${5} MΩ N-E \${6} MΩ  # at least 1 MΩ
              polarity \${7}
            }
            live $1 with $2 {
              Zs \${8} Ω             # expected 0.96 Ω, at most 5.82 Ω cold
              rcd 30 mA 1x \${9} ms  # at most 300 ms
              test-button \${10}
              function \${11}
            }$0
      "
    `);
  });

  it("are only those that are not there yet", async () => {
    const lines = added(loft, await filled(loft, "3"));
    expect(lines).toContain("at S2");
    expect(lines).not.toMatch(/at S1|R1\+R2|Zs|ends/);
  });

  it("leave the file as sound as it was", async () => {
    const after = (await filled(loft, "5")) ?? "";
    const said = (text: string) => findingsOf(text).map(({ check, message }) => `${check} ${message}`);
    expect(said(after)).toEqual(said(loft));
  });

  it("become tests once the sign is taken away and the figures are put in", async () => {
    const after = (await filled(loft, "5")) ?? "";
    const uncommented = after
      .split("\n")
      .map((line) => (/^ {6}# (?!To be filled)/.test(line) ? line.replace("# ", "") : line))
      .join("\n")
      .replaceAll("DATE", "2026-03-09")
      .replaceAll(/… (Ω|MΩ|ms)/g, "1 $1")
      .replaceAll("…", "ok");
    expect(findingsOf(uncommented).filter(({ check }) => check.startsWith("language/"))).toEqual([]);
    expect(format(uncommented)?.text).toContain("R1+R2        1 Ω");
  });

  it("are not added twice, nor to a spare way, nor to one that is being typed", async () => {
    const once = (await filled(loft, "5")) ?? "";
    expect(await filled(once, "5")).toBeUndefined();
    expect(await filled(loft, "9")).toBeUndefined();
    expect(await filled(loft.replace("length  18 m", "length  18"), "5")).toBeUndefined();
  });
});
