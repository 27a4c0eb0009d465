/** Where each key leads in the grid for test readings, without a browser: the browser's own test types a whole board. */
import { describe, expect, test } from "vitest";
import { type Action, actionOf, type Before, type Place } from "../../client/page/grid-keys.ts";

/** Two radials with a ring between them: a column that not every row has, and one cell that is read already. */
const rows = [
  { key: "1", cells: [cell("R1+R2"), cell("polarity"), cell("Zs")] },
  { key: "2", cells: [cell("r1"), cell("R1+R2", "0.31"), cell("Zs")] },
  { key: "3", cells: [cell("R1+R2"), cell("polarity"), cell("Zs")] },
];
const columns = [
  { key: "r1", words: [] },
  { key: "R1+R2", words: [] },
  { key: "polarity", words: ["ok", "failed"] },
  { key: "Zs", words: [] },
];

function cell(column: string, text = "") {
  return { column, text };
}

const at = (row: string, column: string): Place => ({ row, column });

function pressed(key: string, here: Place, more: Partial<Before> & { shift?: boolean; ctrl?: boolean } = {}) {
  const { shift = false, ctrl = false, ...rest } = more;
  const event = { key, shiftKey: shift, ctrlKey: ctrl, metaKey: false, altKey: false };
  return actionOf(event, { rows, columns, here, typed: undefined, draftOf: () => undefined, ...rest });
}

const commit = (text: string, to: Place | undefined): Action => ({ does: "commit", text, to });

describe("Enter and Tab", () => {
  test("go on to the next reading that is still to be made", () => {
    expect(pressed("Enter", at("1", "Zs"), { typed: "0.4" })).toEqual(commit("0.4", at("2", "r1")));
    expect(pressed("Tab", at("2", "r1"), { typed: "0.3" })).toEqual(commit("0.3", at("2", "Zs")));
  });

  test("pass over what was entered a moment ago", () => {
    const draftOf = ({ row, column }: Place) => (row === "2" && column === "Zs" ? "0.5" : undefined);
    expect(pressed("Enter", at("2", "r1"), { typed: "0.3", draftOf })).toEqual(commit("0.3", at("3", "R1+R2")));
  });

  test("with shift go back by one", () => {
    expect(pressed("Tab", at("2", "Zs"), { shift: true })).toEqual(commit("", at("2", "R1+R2")));
  });

  test("at the end Enter stays, and Tab leaves the grid with what was typed", () => {
    const last = at("3", "Zs");
    expect(pressed("Enter", last, { typed: "0.4" })).toEqual(commit("0.4", undefined));
    expect(pressed("Tab", last, { typed: "0.4" })).toEqual({ ...commit("0.4", undefined), leaves: true });
    expect(pressed("Tab", last)).toBeUndefined();
    expect(pressed("Tab", at("1", "R1+R2"), { shift: true })).toBeUndefined();
  });
});

describe("arrows", () => {
  test("down and up pass over rows without that column", () => {
    expect(pressed("ArrowDown", at("1", "polarity"))).toEqual(commit("", at("3", "polarity")));
    expect(pressed("ArrowUp", at("3", "polarity"), { typed: "x" })).toEqual(commit("x", at("1", "polarity")));
  });

  test("at an edge they stay, and write what was typed", () => {
    expect(pressed("ArrowUp", at("1", "Zs"), { typed: "0.4" })).toEqual(commit("0.4", at("1", "Zs")));
    expect(pressed("ArrowLeft", at("1", "R1+R2"))).toEqual(commit("", at("1", "R1+R2")));
  });

  test("left and right are the text field's own while one types", () => {
    expect(pressed("ArrowRight", at("1", "Zs"))).toEqual(commit("", at("2", "r1")));
    expect(pressed("ArrowRight", at("1", "Zs"), { typed: "0.4" })).toBeUndefined();
  });

  test("Home and End go to the ends of the row", () => {
    expect(pressed("Home", at("2", "Zs"))).toEqual({ does: "move", to: at("2", "r1") });
    expect(pressed("End", at("2", "r1"))).toEqual({ does: "move", to: at("2", "Zs") });
    expect(pressed("End", at("2", "r1"), { typed: "0" })).toBeUndefined();
  });
});

describe("signs", () => {
  test("a figure begins an entry, a letter of a word is the word", () => {
    expect(pressed("0", at("1", "Zs"))).toEqual({ does: "type", text: "0" });
    expect(pressed(">", at("1", "Zs"))).toEqual({ does: "type", text: ">" });
    expect(pressed("o", at("1", "polarity"))).toEqual(commit("ok", at("1", "Zs")));
    expect(pressed("F", at("1", "polarity"))).toEqual(commit("failed", at("1", "Zs")));
    expect(pressed(" ", at("1", "polarity"))).toEqual(commit("ok", at("1", "Zs")));
    expect(pressed("0", at("1", "Zs"), { typed: "0" })).toBeUndefined();
    expect(pressed("%", at("1", "Zs"))).toBeUndefined();
  });

  test("= repeats the reading before it, one that was entered a moment ago too", () => {
    expect(pressed("=", at("2", "Zs"))).toEqual(commit("0.31", at("3", "R1+R2")));
    const draftOf = ({ column }: Place) => (column === "r1" ? "0.29" : undefined);
    expect(pressed("=", at("2", "R1+R2"), { draftOf })).toEqual(commit("0.29", at("2", "Zs")));
    expect(pressed("=", at("1", "R1+R2"))).toEqual({ does: "move", to: undefined });
  });
});

test("F2 takes up what stands there, Escape lets go of what is typed, and then of what was said", () => {
  expect(pressed("F2", at("2", "R1+R2"))).toEqual({ does: "type", text: "0.31" });
  expect(pressed("Escape", at("1", "Zs"), { typed: "0.4" })).toEqual({ does: "type", text: undefined });
  expect(pressed("Escape", at("1", "Zs"))).toEqual({ does: "dismiss" });
});

test("undoing is the grid's own only where nothing is typed, and no other shortcut is", () => {
  expect(pressed("z", at("1", "Zs"), { ctrl: true })).toEqual({ does: "undo" });
  expect(pressed("z", at("1", "Zs"), { ctrl: true, typed: "0" })).toBeUndefined();
  expect(pressed("c", at("1", "polarity"), { ctrl: true })).toBeUndefined();
});
