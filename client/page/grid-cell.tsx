/** One cell of the grid: what was read or is expected, its limit, and the field it becomes while one types. */
import type { Placed } from "../../server/lsp/placed.ts";
import type { GridCell, GridColumn, GridRow } from "../../server/views/grid.ts";

export type Row = Placed<GridRow>;
type Cell = Placed<GridCell>;

interface Props {
  readonly id: string;
  readonly row: Row;
  readonly column: GridColumn;
  readonly cell: Cell;
  /** The day of the tests that are being entered. */
  readonly day: string;
  readonly isHere: boolean;
  readonly typed: string | undefined;
  readonly type: (text: string) => void;
  readonly take: () => void;
}

export function EntryCell({ id, row, column, cell, day, isHere, typed, type, take }: Props) {
  const isOpen = cell.text === "";
  const isEarlier = !isOpen && cell.on !== day;
  const standing = typed === undefined ? (cell.standing ?? "") : standingOf(typed, cell);
  const words = wordsOf(row, column, cell, isEarlier);
  return (
    <td
      data-cell={id}
      class={`cell ${standing} ${isHere ? "here" : ""} ${isOpen ? "open" : ""} ${isEarlier ? "earlier" : ""}`}
      tabIndex={isHere && typed === undefined ? 0 : -1}
      title={words}
      onFocus={take}
      onDblClick={() => type(cell.text)}
    >
      {typed === undefined ? (
        <span class="value">{isOpen ? <Expected text={cell.expected} /> : cell.text}</span>
      ) : (
        <input
          type="text"
          inputMode={column.unit === "" ? "text" : "decimal"}
          aria-label={words}
          value={typed}
          onInput={(event) => type(event.currentTarget.value)}
        />
      )}
      <Limit text={limitOf(cell)} />
    </td>
  );
}

const Expected = ({ text }: { readonly text: string }) => (
  <span class="ghost">
    <span class="sr">{text === "" ? "not read" : "not read, expected "}</span>
    {text}
  </span>
);

const Limit = ({ text }: { readonly text: string }) =>
  text === "" ? null : (
    <span class="limit">
      <span class="sr">limit </span>
      {text}
    </span>
  );

const limitOf = ({ limits }: Cell): string => limits.map(({ text }) => text).join(", ");

/** For a screen reader, and for the pointer. */
function wordsOf(row: Row, column: GridColumn, cell: Cell, isEarlier: boolean): string {
  const limit = limitOf(cell);
  return [
    `${column.title}, way ${row.id} ${row.title}`,
    cell.text === "" ? "not read" : cell.text,
    ...(isEarlier && cell.on !== "" ? [`read on ${cell.on}`] : []),
    ...(cell.expected === "" ? [] : [`expected ${cell.expected}`]),
    ...(limit === "" ? [] : [`limit ${limit}`]),
  ].join(", ");
}

/** While one types, only whether the figure is within its limit; all else the checks say once the cell is left. */
function standingOf(typed: string, { limits }: Cell): "within" | "beyond" | "" {
  const figure = /^([<>]?)\s*(\d*\.?\d+)/.exec(typed.trim());
  if (!figure || limits.length === 0) return "";
  const value = Number(figure[2]);
  const beyond = limits.some(({ sense, value: limit }) =>
    sense === "most" ? value > limit : value < limit && figure[1] !== ">",
  );
  return beyond ? "beyond" : "within";
}
