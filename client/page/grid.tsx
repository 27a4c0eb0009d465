/**
 * Test entry: a grid for the keyboard first. Typing writes into the cell, Enter or Tab goes on to the next reading that
 * is still to be made, arrows go anywhere. What is entered is written into the schedule at once, as lines of its own.
 */
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { GridView } from "../../server/views/grid.ts";
import type { Row } from "./grid-cell.tsx";
import { type EnterReading, useEntry, useShown, type Visit } from "./grid-entry.ts";
import { EntryTable } from "./grid-table.tsx";
import type { Entered } from "./messages.ts";

interface Props {
  readonly grid: Placed<GridView>;
  readonly reveal: (at: At) => void;
  readonly enter: EnterReading;
  readonly undo: () => void;
  readonly entered: Entered | undefined;
}

const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export function Grid({ grid, reveal, enter, undo, entered }: Props) {
  const [visit, setVisit] = useState<Visit>(() => ({ day: today(), instrument: "", withPoints: false }));
  const shown = useShown(grid, visit);
  const entry = useEntry({ rows: shown.rows, visit, enter, entered });
  const { correction, problem } = entry.state;
  return (
    <>
      <div class="above">
        <h1>{grid.title}</h1>
        <Tools
          grid={grid}
          visit={visit}
          change={(part) => setVisit((before) => ({ ...before, ...part }))}
          undo={undo}
        />
        <Keys rows={shown.rows} />
      </div>
      {shown.rows.length === 0 ? <p class="note">No circuit is written yet.</p> : null}
      <p class="trouble" role="status" aria-live="polite" hidden={problem === ""}>
        {problem}
      </p>
      {correction ? <Why ask={correction} close={entry.correct} /> : null}
      <div class="paper">
        <EntryTable title={grid.title} shown={shown} entry={entry} day={visit.day} undo={undo} reveal={reveal} />
      </div>
    </>
  );
}

interface ToolsProps {
  readonly grid: Placed<GridView>;
  readonly visit: Visit;
  readonly change: (part: Partial<Visit>) => void;
  readonly undo: () => void;
}

/** When, with what, and how far the rings go. */
function Tools({ grid, visit, change, undo }: ToolsProps) {
  const names = ["", ...grid.instruments];
  return (
    <div class="tools">
      <label>
        <span>Day of the tests </span>
        <input
          type="text"
          size={10}
          value={visit.day}
          onChange={(event) => change({ day: event.currentTarget.value.trim() })}
        />
      </label>
      {grid.instruments.length === 0 ? null : (
        <label>
          <span>Instrument </span>
          <select value={visit.instrument} onChange={(event) => change({ instrument: event.currentTarget.value })}>
            {names.map((name) => (
              <option key={name} value={name}>
                {name === "" ? "not stated" : name}
              </option>
            ))}
          </select>
        </label>
      )}
      {grid.rows.some(({ point }) => point !== undefined) ? (
        <label>
          <input
            type="checkbox"
            checked={visit.withPoints}
            onChange={(event) => change({ withPoints: event.currentTarget.checked })}
          />
          Points of the rings
        </label>
      ) : null}
      <button type="button" onClick={undo}>
        Undo
      </button>
    </div>
  );
}

const Keys = ({ rows }: { readonly rows: readonly Row[] }) => {
  const open = rows.reduce((sum, { cells }) => sum + cells.filter(({ text }) => text === "").length, 0);
  return (
    <p class="note" id="grid-keys">
      {`${open} still to be read. Enter goes to the next one. “=” repeats the reading before it, “o” is ok, LIM and a reason stand for what could not be read.`}
    </p>
  );
};

interface WhyProps {
  readonly ask: { readonly stands: string; readonly text: string };
  readonly close: (why: string | undefined) => void;
}

/** A reading that was recorded that day is corrected with its reason, and stays beside the new one. */
function Why({ ask, close }: WhyProps) {
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => input.current?.focus(), []);
  return (
    <form
      class="ask"
      onSubmit={(event) => {
        event.preventDefault();
        const why = input.current?.value.trim() ?? "";
        if (why !== "") close(why);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") close(undefined);
      }}
    >
      <label>
        <span>{`${ask.stands} stands there for that day. Why is it ${ask.text}? `}</span>
        <input type="text" size={30} ref={input} />
      </label>{" "}
      <button type="submit" class="plain-button">
        Correct it
      </button>{" "}
      <button type="button" class="plain-button" onClick={() => close(undefined)}>
        Leave it
      </button>
    </form>
  );
}
