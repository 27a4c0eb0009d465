/**
 * A text that is open in an editor and becomes others by edits, as it does under a hand that types: only what an edit
 * touches is worked out again, so that ten texts cost little more than one.
 */
import assert from "node:assert/strict";
import { applyEdits, lineStarts, positionOf, type TextEdit } from "../../server/text/lines.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { Files } from "./files.ts";
import { byTerminal, byWorkspace } from "./judgements.ts";

const name = "sample.ways";

export class OpenText {
  readonly #files = new Files({});
  readonly #base: string;
  /** What takes the last edit back. */
  #back: TextEdit | undefined;

  constructor(base: string) {
    this.#base = base;
    this.#files.open(name, base);
  }

  /** The text with another in the place of what it was opened with. */
  async as(text: string): Promise<Snapshot> {
    if (this.#back) this.#edit(this.#back);
    const forth = between(this.#base, text);
    this.#back = between(text, this.#base);
    this.#edit(forth);
    return await this.#files.snapshot(name);
  }

  /** What is found after all edits is what a program finds that has just been started. */
  async isAsFresh(): Promise<void> {
    const expected = byTerminal(this.#files).get(this.#files.path(name));
    assert.deepEqual(await byWorkspace(this.#files, name), expected, "after its edits another thing is found");
  }

  #edit(edit: TextEdit): void {
    const now = this.#files.text(name) ?? "";
    const starts = lineStarts(now);
    const range = { start: positionOf(starts, edit.start), end: positionOf(starts, edit.end) };
    this.#files.edit(name, { range, text: edit.text }, applyEdits(now, [edit]));
  }
}

/** The one edit between what two texts have in common at either end. */
function between(before: string, after: string): TextEdit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let same = 0;
  while (same < most - start && before.at(-1 - same) === after.at(-1 - same)) same++;
  return { start, end: before.length - same, text: after.slice(start, after.length - same) };
}
