import { describe, expect, it } from "vitest";
import { actionsFor, findingsTouching } from "../../server/features/actions.ts";
import { withEnclosingBlock } from "../../server/features/cursor.ts";
import { folds } from "../../server/features/folding.ts";
import { newSchedule, standardChoices } from "../../server/features/new-schedule.ts";
import { selections } from "../../server/features/selection.ts";
import { type OutlineSymbol, symbols } from "../../server/features/symbols.ts";
import { tokensIn } from "../../server/features/tokens.ts";
import { format } from "../../server/format/format.ts";
import { applyEdits } from "../../server/text/lines.ts";
import { atCursor, loft, loftWith, openSample } from "../helpers/cursor.ts";

const drawn = (list: readonly OutlineSymbol[], indent = ""): string =>
  list
    .map(({ name, detail, kind, children }) => {
      const line = `${indent}${kind}: ${name}${detail === "" ? "" : ` — ${detail}`}`;
      return [line, ...(children.length > 0 ? [drawn(children, `${indent}  `)] : [])].join("\n");
    })
    .join("\n");

it("the outline shows what a person looks for beside each way", async () => {
  const { snapshot } = await openSample(loft);
  expect(drawn(symbols(snapshot))).toMatchInlineSnapshot(`
    "instrument: M1 — Multifunction tester
    cable-type: twin
    installation: Wren Pier Sail Loft — BS 7671:2018+A2:2022 · tested
      supply: supply — TN-S
      board: A — Loft board
        way: 3 Cutting-floor sockets — ring · B32 · 2.5/2.5 mm²
        way: 5 Sign lighting — radial · B6 · 1.5/1 mm²
        way: 9 spare"
  `);
});

it("blocks and runs of comments fold, and a closing brace stays in sight", async () => {
  const { snapshot } = await openSample(loft);
  const lines = loft.split("\n");
  const picture = folds(snapshot).map(({ first, last }) => `${lines[first]?.trim()} … ${lines[last]?.trim()}`);
  expect(picture.join("\n")).toMatchInlineSnapshot(`
    "installation "Wren Pier Sail Loft" { … }
    supply { … Ipf       0.92 kA
    board A "Loft board" { … way 9 spare
    # Sockets of the cutting floor, … # with one spur.
    way 3 ring "Cutting-floor sockets" { … }
    dead 2026-03-04 with M1 { … insulation  500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
    live 2026-03-05 with M1 { … test-button  ok
    way 5 radial "Sign lighting" { … serves  lighting"
  `);
});

it("each word is coloured for what it is", async () => {
  const { snapshot } = await openSample(loft);
  const wanted = /device {2}BS EN 61009|at S5|live 2026|run {5}S3|rcd east|insulation/;
  const picture: string[] = [];
  for (const { segment, within } of withEnclosingBlock(snapshot.file.document.segments)) {
    for (const { start, length, kind, defines } of tokensIn(segment, within)) {
      const line = segment.text.slice(segment.text.slice(0, start).lastIndexOf("\n") + 1).split("\n")[0] ?? "";
      if (!wanted.test(line)) continue;
      picture.push(`${segment.text.slice(start, start + length)}: ${kind}${defines ? ", defined" : ""}`);
    }
  }
  expect(picture.join("\n")).toMatchInlineSnapshot(`
    "rcd: keyword
    east: variable, defined
    BS EN 61008: type
    63: number
    A: unit
    30: number
    mA: unit
    type: property
    A: enumMember
    run: keyword
    S3: variable
    4: number
    m: unit
    S5: variable
    at: keyword
    S5: variable
    L-N: property
    0.22: number
    Ω: unit
    L-E: property
    0.22: number
    Ω: unit
    polarity: property
    ok: enumMember
    insulation: keyword
    500: number
    V: unit
    L-N: property
    310: number
    MΩ: unit
    L-E: property
    >999: number
    MΩ: unit
    N-E: property
    >999: number
    MΩ: unit
    live: class
    2026-03-05: date
    with: property
    M1: variable
    device: keyword
    BS EN 61009: type
    B6: number
    6: number
    kA: unit
    30: number
    mA: unit
    type: property
    A: enumMember"
  `);
});

it("a selection grows from the word to its line, its block and outward", async () => {
  const { snapshot, cursor } = await atCursor(loftWith("Zs           0.6┆4 Ω"));
  const picture = selections(snapshot, cursor).map(({ start, end }) => {
    const text = cursor.segment.text.slice(start, end).trim();
    return text.length > 60
      ? `${text.slice(0, 25)} … ${text.slice(-25)}`.replaceAll("\n", "↵")
      : text.replaceAll("\n", "↵");
  });
  expect(picture.join("\n")).toMatchInlineSnapshot(`
    "0.64 Ω
    Zs           0.64 Ω
    Zs           0.64 Ω↵      … s↵        test-button  ok
    live 2026-03-05 with M1 { …   test-button  ok↵      }
    device  BS EN 60898 B32 6 …   test-button  ok↵      }
    way 3 ring "Cutting-floor … -button  ok↵      }↵    }
    way 3 ring "Cutting-floor … -button  ok↵      }↵    }"
  `);
});

describe("actions", () => {
  const actionsIn = async (text: string, check: string) => {
    const { snapshot } = await openSample(text);
    const found = findingsTouching(snapshot, (finding) => finding.check === check);
    return actionsFor(snapshot, found).map(({ title, edits, segment }) => ({
      title,
      text: applyEdits(segment.text, edits),
    }));
  };

  it("offer a finding's own fixes", async () => {
    const actions = await actionsIn(loft.replace("serves  lighting", "serves  lihgting"), "language/wrong-argument");
    expect(actions.map(({ title }) => title)).toEqual(["Write lighting"]);
  });

  it("write a departure as the last line of the way", async () => {
    const actions = await actionsIn(
      loft.replace("0.64 Ω", "1.64 Ω").replace("      behind  east\n", ""),
      "loop/zs-over-limit",
    );
    const departure = actions.find(({ title }) => title.startsWith("Depart"));
    // Several checks can mark one word: each offer names its own.
    expect(departure?.title).toBe("Depart from loop/zs-over-limit, with a reason");
    expect(departure?.text.split("\n").slice(-5).join("\n")).toMatchInlineSnapshot(`
      "        test-button  ok
            }
            departure loop/zs-over-limit "reason"
          }
      "
    `);
  });

  it("depart from what is found in a block of tests on the board above that block", async () => {
    const late = loft.replace(
      / {4}rcd east .*\n/,
      (line) => `${line}    live 2026-03-05 with M1 {\n      rcd east 30 mA 1x 999 ms\n    }\n`,
    );
    const [departure] = (await actionsIn(late, "rcd/time-over-limit")).filter(({ title }) =>
      title.startsWith("Depart"),
    );
    expect(departure?.text).toMatch(/^ {4}departure rcd\/time-over-limit "reason"\n {4}live /);
  });

  it("offer no departure from the language itself", async () => {
    const actions = await actionsIn(loft.replace("0.64 Ω", "0.64"), "language/missing-unit");
    expect(actions.map(({ title }) => title)).toMatchInlineSnapshot(`
      [
        "Write 0.64 Ω",
        "Write 0.64 mΩ",
      ]
    `);
  });
});

describe("a new schedule", () => {
  it("is offered in the edition in force before one that is withdrawn", () => {
    expect(standardChoices.map(({ detail }) => /withdrawn/.test(detail))).toEqual(
      standardChoices.map((_, at) => at > 0),
    );
  });

  it.each(standardChoices.map(({ id }) => id))("to %s is sound and in the one style", async (standard) => {
    for (const earthing of ["TN-S", "TN-C-S", "TT"]) {
      const text = newSchedule({ name: 'The "Old" Loft', earthing, standard, premises: "dwelling", ways: 12 });
      const { snapshot } = await openSample(text);
      const errors = findingsTouching(snapshot, ({ severity }) => severity === "error");
      expect(errors.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
      expect(format(text)?.text ?? text).toBe(text);
    }
  });
});
