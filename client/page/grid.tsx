/**
 * Test entry: a grid for the keyboard first. Typing writes into the cell, Enter or Tab goes on to the next reading that
 * is still to be made, arrows go anywhere. What is entered is written into the schedule at once, as lines of its own.
 */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { GridCell, GridColumn, GridRow, GridView } from "../../server/views/grid.ts";
import { FoundList, Go } from "./board.tsx";
import { actionOf, idOf, orderOf, type Place } from "./grid-keys.ts";
import type { Entered, EnterMessage } from "./messages.ts";

interface Props {
  readonly grid: Placed<GridView>;
  readonly reveal: (at: At) => void;
  readonly enter: (entry: Omit<EnterMessage, "kind" | "board">) => void;
  readonly undo: () => void;
  readonly entered: Entered | undefined;
}

type Row = Placed<GridRow>;
type Cell = Placed<GridCell>;

const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export function Grid({ grid, reveal, enter, undo, entered }: Props) {
  const [day, setDay] = useState(today);
  const [instrument, setInstrument] = useState("");
  const [withPoints, setWithPoints] = useState(false);
  const [at, setAt] = useState<Place | undefined>();
  const [typed, setTyped] = useState<string | undefined>();
  /** What was entered here a moment ago, as it was typed: it may be typed anew. */
  const [drafts, setDrafts] = useState<ReadonlyMap<string, string>>(new Map());
  /** What is on its way into the schedule, as it was typed: the next key does not wait for it. */
  const pending = useRef(new Map<string, string>());
  const [asks, setAsks] = useState<
    { readonly place: Place; readonly stands: string; readonly text: string } | undefined
  >();
  const [said, setSaid] = useState("");
  const table = useRef<HTMLTableElement>(null);

  const rows = useMemo(
    () => grid.rows.filter(({ point }) => withPoints || point === undefined),
    [grid.rows, withPoints],
  );
  const columns = useMemo(() => {
    const used = new Set(rows.flatMap(({ cells }) => cells.map(({ column }) => column)));
    return grid.columns.filter(({ key }) => used.has(key));
  }, [grid.columns, rows]);
  const order = useMemo(() => orderOf(rows), [rows]);
  const here = at && order.some((one) => idOf(one) === idOf(at)) ? at : order[0];

  // What the schedule made of the last entry.
  useEffect(() => {
    if (!entered) return;
    const place = { row: entered.row, column: entered.column };
    pending.current.delete(idOf(place));
    if (entered.stands !== undefined) {
      setAsks({ place, stands: entered.stands, text: entered.text });
      setAt(place);
    } else if (entered.problem !== undefined) {
      setSaid(entered.problem);
      setAt(place);
      setTyped(entered.text);
    } else {
      setDrafts((before) => new Map(before).set(idOf(place), entered.written ?? entered.text));
      setSaid("");
    }
  }, [entered]);

  useLayoutEffect(() => {
    // Where a reason is asked for, that is where one writes.
    if (!at || asks) return;
    const cell = table.current?.querySelector<HTMLElement>(`[data-cell="${CSS.escape(idOf(at))}"]`);
    const input = cell?.querySelector("input");
    (input ?? cell)?.focus();
  }, [at, asks, typed === undefined]);

  const move = (to: Place | undefined): void => {
    setTyped(undefined);
    if (to) setAt(to);
  };
  const send = (place: Place, text: string, why?: string): void => {
    const row = rows.find(({ key }) => key === place.row);
    if (!row) return;
    const draft = drafts.get(idOf(place));
    pending.current.set(idOf(place), text);
    enter({
      row: place.row,
      column: place.column,
      text,
      day,
      ...(row.point === undefined ? {} : { point: row.point }),
      ...(instrument === "" ? {} : { instrument }),
      ...(draft === undefined ? {} : { draft }),
      ...(why === undefined ? {} : { why }),
    });
  };
  const commit = (place: Place, text: string, to: Place | undefined): void => {
    if (text.trim() !== "") send(place, text.trim());
    move(to);
  };
  const draftOf = (place: Place): string | undefined => pending.current.get(idOf(place)) ?? drafts.get(idOf(place));
  const press = (event: KeyboardEvent): void => {
    if (!here || !(event.target instanceof HTMLElement) || event.target.closest("button, select, .ask")) return;
    const action = actionOf(event, { rows, columns, here, typed, draftOf });
    if (!action) return;
    if (!("leaves" in action)) event.preventDefault();
    if (action.does === "commit") commit(here, action.text, action.to);
    else if (action.does === "move") move(action.to);
    else if (action.does === "type") setTyped(action.text);
    else if (action.does === "undo") undo();
    else setSaid("");
  };

  const open = rows.reduce((sum, { cells }) => sum + cells.filter(({ text }) => text === "").length, 0);
  const entryAt = (row: Row, column: GridColumn) => {
    const cell = row.cells.find((one) => one.column === column.key);
    if (!cell) return <td key={column.key} class="none" />;
    const place = { row: row.key, column: column.key };
    const isHere = here !== undefined && idOf(here) === idOf(place);
    const type = (text: string): void => {
      setAt(place);
      setTyped(text);
    };
    const take = (): void => {
      if (here && typed !== undefined && !isHere) commit(here, typed, place);
      else setAt(place);
    };
    const shown = { row, column, cell, day, isHere, typed: isHere ? typed : undefined };
    return <Entry key={column.key} id={idOf(place)} {...shown} type={type} take={take} />;
  };

  return (
    <>
      <div class="above">
        <h1>{grid.title}</h1>
        <Tools
          grid={grid}
          visit={{ day, instrument, withPoints }}
          set={{ day: setDay, instrument: setInstrument, withPoints: setWithPoints }}
          undo={undo}
        />
        <p class="note" id="grid-keys">
          {`${open} still to be read. Enter goes to the next one. “=” repeats the reading before it, “o” is ok, LIM and a reason stand for what could not be read.`}
        </p>
      </div>
      {rows.length === 0 ? <p class="note">No circuit is written yet.</p> : null}
      <p class="trouble" role="status" aria-live="polite" hidden={said === ""}>
        {said}
      </p>
      {asks ? (
        <Why
          ask={asks}
          close={(why) => {
            setAsks(undefined);
            if (why !== undefined) send(asks.place, asks.text, why);
            setAt(asks.place);
          }}
        />
      ) : null}
      <div class="paper">
        <table
          class="entry"
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: this is how a grid is made of a table
          role="grid"
          aria-label={grid.title}
          aria-describedby="grid-keys"
          ref={table}
          onKeyDown={press}
        >
          <thead>
            <Head columns={columns} />
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key} class={row.point === undefined ? "" : "point"}>
                <th scope="row">
                  <Go at={row.mark} reveal={reveal}>
                    {row.point === undefined ? <span class="number">{row.id}</span> : null} {cut(row.title || row.id)}
                  </Go>
                </th>
                {columns.map((column) => entryAt(row, column))}
                <td class="found-cell">
                  <FoundList found={row.findings} reveal={reveal} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

interface Visit {
  readonly day: string;
  readonly instrument: string;
  readonly withPoints: boolean;
}

interface ToolsProps {
  readonly grid: Placed<GridView>;
  readonly visit: Visit;
  readonly set: { readonly [Name in keyof Visit]: (value: Visit[Name]) => void };
  readonly undo: () => void;
}

/** What holds for all that is entered: when, with what, and how far the rings go. */
function Tools({ grid, visit, set, undo }: ToolsProps) {
  const names = ["", ...grid.instruments];
  return (
    <div class="tools">
      <label>
        <span>Day of the tests </span>
        <input
          type="text"
          size={10}
          value={visit.day}
          onChange={(event) => set.day(event.currentTarget.value.trim())}
        />
      </label>
      {grid.instruments.length === 0 ? null : (
        <label>
          <span>Instrument </span>
          <select value={visit.instrument} onChange={(event) => set.instrument(event.currentTarget.value)}>
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
            onChange={(event) => set.withPoints(event.currentTarget.checked)}
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

const Head = ({ columns }: { readonly columns: readonly GridColumn[] }) => (
  <tr>
    <th scope="col">Way</th>
    {columns.map(({ key, title, unit }) => (
      <th key={key} scope="col">
        {title}
        {unit === "" ? null : <span class="unit"> {unit}</span>}
      </th>
    ))}
    <th scope="col">To do</th>
  </tr>
);

const longest = 20;
const cut = (title: string): string => (title.length > longest ? `${title.slice(0, longest - 1)}…` : title);

interface EntryProps {
  readonly id: string;
  readonly row: Row;
  readonly column: GridColumn;
  readonly cell: Cell;
  readonly day: string;
  readonly isHere: boolean;
  readonly typed: string | undefined;
  readonly type: (text: string) => void;
  readonly take: () => void;
}

function Entry({ id, row, column, cell, day, isHere, typed, type, take }: EntryProps) {
  const earlier = cell.text !== "" && cell.on !== day;
  const standing = typed === undefined ? (cell.standing ?? "") : judge(typed, cell);
  const limit = cell.limits.map(({ text }) => text).join(", ");
  const words = [
    `${column.title}, way ${row.id} ${row.title}`,
    cell.text === "" ? "not read" : cell.text,
    ...(earlier && cell.on !== "" ? [`read on ${cell.on}`] : []),
    ...(cell.expected === "" ? [] : [`expected ${cell.expected}`]),
    ...(limit === "" ? [] : [`limit ${limit}`]),
  ].join(", ");
  return (
    <td
      data-cell={id}
      class={`cell ${standing} ${isHere ? "here" : ""} ${cell.text === "" ? "open" : ""} ${earlier ? "earlier" : ""}`}
      tabIndex={isHere && typed === undefined ? 0 : -1}
      title={words}
      onFocus={take}
      onDblClick={() => type(cell.text)}
    >
      {typed === undefined ? (
        <span class="value">
          {cell.text === "" ? (
            <span class="ghost">
              <span class="sr">{cell.expected === "" ? "not read" : "not read, expected "}</span>
              {cell.expected}
            </span>
          ) : (
            cell.text
          )}
        </span>
      ) : (
        <input
          type="text"
          inputMode={column.unit === "" ? "text" : "decimal"}
          aria-label={words}
          value={typed}
          onInput={(event) => type(event.currentTarget.value)}
        />
      )}
      {limit === "" ? null : (
        <span class="limit">
          <span class="sr">limit </span>
          {limit}
        </span>
      )}
    </td>
  );
}

/** While it is typed, only whether it is within the limit; what it means the checks say when it is left. */
function judge(typed: string, { limits }: Cell): "within" | "beyond" | "" {
  const figure = /^([<>]?)\s*(\d*\.?\d+)/.exec(typed.trim());
  if (!figure || limits.length === 0) return "";
  const value = Number(figure[2]);
  const beyond = limits.some(({ sense, value: limit }) =>
    sense === "most" ? value > limit : value < limit && figure[1] !== ">",
  );
  return beyond ? "beyond" : "within";
}

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
