/** The table of the grid: a row a circuit, a cell a reading, and the keys that lead from one to the next. */
import type { At } from "../../server/lsp/placed.ts";
import type { GridColumn } from "../../server/views/grid.ts";
import { FoundList, Go } from "./board.tsx";
import { EntryCell, type Row } from "./grid-cell.tsx";
import { type Entry, type Shown, useFocus } from "./grid-entry.ts";
import { actionOf, idOf, type Place } from "./grid-keys.ts";

interface Props {
  readonly title: string;
  readonly shown: Shown;
  readonly entry: Entry;
  /** The day of the tests that are being entered. */
  readonly day: string;
  readonly undo: () => void;
  readonly reveal: (at: At) => void;
}

export function EntryTable({ title, shown, entry, day, undo, reveal }: Props) {
  const { rows, columns, order } = shown;
  const { at } = entry.state;
  const here = at && order.some((one) => idOf(one) === idOf(at)) ? at : order[0];
  const table = useFocus(entry.state);
  const press = (event: KeyboardEvent): void => {
    if (!here || !(event.target instanceof HTMLElement) || event.target.closest("button, select, .ask")) return;
    const { typed } = entry.state;
    const action = actionOf(event, { rows, columns, here, typed, draftOf: entry.draftOf });
    if (!action) return;
    if (!("leaves" in action)) event.preventDefault();
    if (action.does === "commit") entry.commit(here, action.text, action.to);
    else if (action.does === "move") entry.move(action.to);
    else if (action.does === "type") entry.change({ typed: action.text });
    else if (action.does === "undo") undo();
    else entry.change({ problem: "" });
  };
  return (
    <table
      class="entry"
      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: this is how a grid is made of a table
      role="grid"
      aria-label={title}
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
            <RowName row={row} reveal={reveal} />
            {columns.map((column) => (
              <CellAt key={column.key} {...{ row, column, entry, here, day }} />
            ))}
            <td class="found-cell">
              <FoundList found={row.findings} reveal={reveal} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface CellAtProps extends Pick<Props, "entry" | "day"> {
  readonly row: Row;
  readonly column: GridColumn;
  /** Where the keys are. */
  readonly here: Place | undefined;
}

/** The cell of a row in a column, empty where the circuit has no such reading. */
function CellAt({ row, column, entry, here, day }: CellAtProps) {
  const cell = row.cells.find((one) => one.column === column.key);
  if (!cell) return <td class="none" />;
  const place = { row: row.key, column: column.key };
  const isHere = here !== undefined && idOf(here) === idOf(place);
  const { typed } = entry.state;
  return (
    <EntryCell
      id={idOf(place)}
      {...{ row, column, cell, day, isHere }}
      typed={isHere ? typed : undefined}
      type={(text) => entry.change({ at: place, typed: text })}
      take={() => {
        if (here && typed !== undefined && !isHere) entry.commit(here, typed, place);
        else entry.change({ at: place });
      }}
    />
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

/** The most signs of a circuit's name that leave room for its readings. */
const longest = 20;
const cut = (title: string): string => (title.length > longest ? `${title.slice(0, longest - 1)}…` : title);

const RowName = ({ row, reveal }: { readonly row: Row } & Pick<Props, "reveal">) => (
  <th scope="row">
    <Go at={row.mark} reveal={reveal}>
      {row.point === undefined ? <span class="number">{row.id}</span> : null} {cut(row.title || row.id)}
    </Go>
  </th>
);
