/** Questions and answers beside the lines are lines of the schedule. */
import { describe, expect, test } from "vitest";
import { answering, asking, conversations, type Said } from "../../server/features/review.ts";
import { atCursor, openSample } from "../helpers/cursor.ts";

const text = `wayfile 1
installation "Barn" {
  query "Who has the keys?"
  board A "Board" {
    fed-from supply
    way 1 radial "Boiler" {
      length 14 m
      query "Is the \\"old\\" cable still in use?"
      answer "Only to the pump."
      answer "And not since May."
      query "Which label?"
    }
  }
}
`;

async function following(sample: string, say: (at: Awaited<ReturnType<typeof atCursor>>) => Said) {
  const at = await atCursor(sample);
  const said = say(at);
  if ("problem" in said) return said.problem;
  const start = at.snapshot.positions.offset(said.segment, said.edit.start);
  return at.text.slice(0, start) + said.edit.text + at.text.slice(start);
}

describe("conversations", () => {
  test("each question stands with the answers below it", async () => {
    const { snapshot } = await openSample(text);
    expect(
      conversations(snapshot).map(({ question, answers }) => [question.text, answers.map((one) => one.text)]),
    ).toEqual([
      ["Who has the keys?", []],
      ['Is the "old" cable still in use?', ["Only to the pump.", "And not since May."]],
      ["Which label?", []],
    ]);
  });

  test("an answer goes below the last line of its conversation", async () => {
    const sample = text.replace('      answer "Only', '┆      answer "Only');
    const next = await following(sample, ({ snapshot, cursor }) =>
      answering(snapshot, cursor, 'It is "dead" \\ gone\n now'),
    );
    expect(next).toContain(
      '      answer "And not since May."\n      answer "It is \\"dead\\" \\\\ gone now"\n      query "Which label?"',
    );
    const { snapshot } = await openSample(next);
    expect(conversations(snapshot)[1]?.answers.at(-1)?.text).toBe('It is "dead" \\ gone now');
  });

  test.each([
    ["a line of a way", "┆      length 14 m", '      length 14 m\n      query "Measured?"\n'],
    [
      "the first line of a way",
      '┆    way 1 radial "Boiler" {',
      '    way 1 radial "Boiler" {\n      query "Measured?"\n      length',
    ],
    ["a line of a board", "┆    fed-from supply", '    fed-from supply\n    query "Measured?"\n'],
  ])("a question about %s stands in its block", async (_, line, expected) => {
    const next = await following(text.replace(line.slice(1), line), ({ snapshot, cursor }) =>
      asking(snapshot, cursor, "Measured?"),
    );
    expect(next).toContain(expected);
    const { snapshot } = await openSample(next);
    expect(conversations(snapshot).some(({ question }) => question.text === "Measured?")).toBe(true);
  });

  test.each([
    ["a reading", "┆        Zs 0.89 Ω  # hot day", '      }\n      query "Zs 0.89 Ω: Measured?"\n      live 2027'],
    ["the first line of a test", "┆      live 2026-03-10 {", '      }\n      query "live 2026-03-10: Measured?"'],
    ["the end of a test", "┆      }\n      live", '      }\n      query "Measured?"\n      live 2027'],
    ["the last of several tests", "┆        Zs 0.9 Ω", '      }\n      query "Zs 0.9 Ω: Measured?"\n    }'],
  ])("a question about %s stands below its test", async (_, line, expected) => {
    const tests =
      "      live 2026-03-10 {\n        Zs 0.89 Ω  # hot day\n      }\n      live 2027-03-10 {\n        Zs 0.9 Ω\n      }\n";
    const sample = text.replace(/ {6}query "Is[\s\S]*?Which label\?"\n/, tests);
    expect(sample).toContain(line.slice(1));
    const next = await following(sample.replace(line.slice(1), line), ({ snapshot, cursor }) =>
      asking(snapshot, cursor, "Measured?"),
    );
    expect(next).toContain(expected);
    const { snapshot } = await openSample(next);
    expect(conversations(snapshot)).toHaveLength(2);
  });

  test("nothing is answered where nothing was asked", async () => {
    const sample = text.replace("      length", "┆      length");
    expect(await following(sample, ({ snapshot, cursor }) => answering(snapshot, cursor, "Yes"))).toBe(
      "That question is not there any more.",
    );
  });
});
