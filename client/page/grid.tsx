/**
 * Test entry: a grid for the keyboard first. Typing writes into the cell, Enter or Tab goes on to the next reading that
 * is still to be made, arrows go anywhere. What is entered is written into the schedule at once, as lines of its own.
 */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { GridCell, GridColumn, GridRow, GridView } from "../../server/views/grid.ts";
import { FoundList, Go } from "./board.tsx";
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

interface Place {
  readonly row: string;
  readonly column: string;
}

const idOf = ({ row, column }: Place): string => `${row}|${column}`;
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
  const order = useMemo(() => rows.flatMap((row) => row.cells.map(({ column }) => ({ row: row.key, column }))), [rows]);
  const first = order[0];
  const here = at && order.some((one) => idOf(one) === idOf(at)) ? at : first;

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
  const columnAt = (place: Place | undefined): GridColumn | undefined =>
    columns.find(({ key }) => key === place?.column);
  const cellAt = (place: Place): Cell | undefined =>
    rows.find(({ key }) => key === place.row)?.cells.find(({ column }) => column === place.column);

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
  /** The next reading that is still to be made, else the next cell. */
  const next = (from: Place, back = false): Place | undefined => {
    const index = order.findIndex((one) => idOf(one) === idOf(from));
    if (back) return order[index - 1];
    const isOpen = (place: Place): boolean =>
      cellAt(place)?.text === "" && !drafts.has(idOf(place)) && !pending.current.has(idOf(place));
    return order.slice(index + 1).find(isOpen) ?? order[index + 1];
  };
  const commit = (place: Place, text: string, to: Place | undefined): void => {
    if (text.trim() !== "") send(place, text.trim());
    move(to);
  };
  const go = (from: Place, down: number, across: number): Place | undefined => {
    if (across !== 0) return order[order.findIndex((one) => idOf(one) === idOf(from)) + across];
    let index = rows.findIndex(({ key }) => key === from.row);
    for (index += down; rows[index]; index += down) {
      const row = rows[index];
      if (row?.cells.some(({ column }) => column === from.column)) return { row: row.key, column: from.column };
    }
    return undefined;
  };
  const leftOf = (place: Place): string => {
    const row = rows.find(({ key }) => key === place.row);
    const index = row?.cells.findIndex(({ column }) => column === place.column) ?? 0;
    const before = row?.cells[index - 1];
    if (!before) return "";
    const id = idOf({ row: place.row, column: before.column });
    return pending.current.get(id) ?? drafts.get(id) ?? before.text;
  };

  const press = (event: KeyboardEvent): void => {
    const place = here;
    if (!place || !(event.target instanceof HTMLElement) || event.target.closest("button, select, .ask")) return;
    const { key } = event;
    if ((event.ctrlKey || event.metaKey) && key.toLowerCase() === "z") {
      if (typed !== undefined) return;
      event.preventDefault();
      undo();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const text = typed ?? "";
    const column = columnAt(place);
    const handled = (then: () => void): void => {
      event.preventDefault();
      then();
    };
    if (key === "Enter" || key === "Tab") {
      const to = next(place, event.shiftKey);
      // At either end the Tab key leaves the grid.
      if (key === "Tab" && !to) return typed === undefined ? undefined : commit(place, text, undefined);
      return handled(() => commit(place, text, to));
    }
    if (key === "Escape") return handled(() => (typed === undefined ? setSaid("") : setTyped(undefined)));
    if (key === "F2") return handled(() => setTyped(cellAt(place)?.text ?? ""));
    const arrow = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }[key];
    const [down = 0, across = 0] = arrow ?? [];
    if (arrow && (typed === undefined || down !== 0))
      return handled(() => commit(place, text, go(place, down, across) ?? place));
    if (key === "Home" || key === "End") {
      if (typed !== undefined) return;
      const row = order.filter((one) => one.row === place.row);
      return handled(() => move(key === "Home" ? row[0] : row.at(-1)));
    }
    if (typed !== undefined || key.length !== 1) return;
    if (key === "=") {
      const before = leftOf(place);
      return handled(() => before !== "" && commit(place, before, next(place)));
    }
    const word =
      column?.words.find((one) => one.startsWith(key.toLowerCase())) ?? (key === " " ? column?.words[0] : undefined);
    if (word) return handled(() => commit(place, word, next(place)));
    if (/[\d.<>a-zA-Z]/.test(key)) return handled(() => setTyped(key));
  };

  const open = rows.reduce((sum, { cells }) => sum + cells.filter(({ text }) => text === "").length, 0);
  return (
    <>
      <div class="above">
        <h1>{grid.title}</h1>
        <div class="tools">
          <label>
            <span>Day of the tests </span>
            <input type="text" size={10} value={day} onChange={(event) => setDay(event.currentTarget.value.trim())} />
          </label>
          {grid.instruments.length === 0 ? null : (
            <label>
              <span>Instrument </span>
              <select value={instrument} onChange={(event) => setInstrument(event.currentTarget.value)}>
                <option value="">not stated</option>
                {grid.instruments.map((name) => (
                  <option key={name} value={name}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
          {grid.rows.some(({ point }) => point !== undefined) ? (
            <label>
              <input
                type="checkbox"
                checked={withPoints}
                onChange={(event) => setWithPoints(event.currentTarget.checked)}
              />
              Points of the rings
            </label>
          ) : null}
          <button type="button" onClick={undo}>
            Undo
          </button>
        </div>
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
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key} class={row.point === undefined ? "" : "point"}>
                <th scope="row">
                  <Go at={row.mark} reveal={reveal}>
                    {row.point === undefined ? <span class="number">{row.id}</span> : null} {cut(row.title || row.id)}
                  </Go>
                </th>
                {columns.map((column) => {
                  const cell = row.cells.find((one) => one.column === column.key);
                  const place = { row: row.key, column: column.key };
                  const isHere = here !== undefined && idOf(here) === idOf(place);
                  return cell ? (
                    <Entry
                      key={column.key}
                      id={idOf(place)}
                      row={row}
                      column={column}
                      cell={cell}
                      day={day}
                      isHere={isHere}
                      typed={isHere ? typed : undefined}
                      type={(text) => {
                        setAt(place);
                        setTyped(text);
                      }}
                      take={() => {
                        if (here && typed !== undefined && idOf(here) !== idOf(place)) commit(here, typed, place);
                        else setAt(place);
                      }}
                    />
                  ) : (
                    <td key={column.key} class="none" />
                  );
                })}
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
