/** Drawings below each other, each with its table. The page scrolls and enlarges them; a redraw moves nothing. */
import { useState } from "preact/hooks";
import type { Drawing, DrawingTable } from "../../server/drawings/shapes.ts";
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { DrawingsView } from "../../server/views/view.ts";
import { Go } from "./board.tsx";
import { ledTo, sideways, upAndDown } from "./keys.ts";
import { type PlacedGroup, Shapes } from "./shapes.tsx";
import type { Chosen } from "./state.ts";

interface Props {
  readonly view: Placed<DrawingsView>;
  readonly chosen: Chosen;
  readonly choose: (change: (before: Chosen) => Chosen) => void;
  readonly reveal: (at: At) => void;
  readonly line: number;
}

export function Drawings({ view, chosen, choose, reveal, line }: Props) {
  const zoomBy = (factor: number) =>
    choose((before) => ({ ...before, zoom: Math.min(4, Math.max(0.5, (before.zoom ?? 1) * factor)) }));
  const fit = () => choose(({ zoom, ...before }) => before);
  return (
    <>
      {view.drawings.length === 0 ? (
        <>
          <h1>Nothing to draw</h1>
          <p class="note">{view.nothing}</p>
        </>
      ) : null}
      {view.drawings.length === 0 ? null : (
        <div class="tools" role="toolbar" aria-label="Size of the drawing">
          <button type="button" onClick={() => zoomBy(1 / 1.25)} aria-label="Smaller">
            −
          </button>
          <button type="button" onClick={() => zoomBy(1.25)} aria-label="Larger">
            +
          </button>
          <button type="button" onClick={fit} aria-pressed={chosen.zoom === undefined}>
            Fit the width
          </button>
          {chosen.zoom === undefined ? null : <span>{`${Math.round(chosen.zoom * 100)} %`}</span>}
        </div>
      )}
      {view.drawings.map((drawing) => (
        <Picture key={drawing.title} drawing={drawing} zoom={chosen.zoom} reveal={reveal} line={line} />
      ))}
    </>
  );
}

interface PictureProps extends Pick<Props, "reveal" | "line"> {
  readonly drawing: Placed<Drawing>;
  /** By its natural size; where it is left out the drawing fits the page, as long as its words stay legible. */
  readonly zoom?: number | undefined;
}

/** Words of 12 px are legible down to this share of them. */
const smallest = 0.7;

export function Picture({ drawing, zoom, reveal, line }: PictureProps) {
  const { title, description, width, height, shapes, table, notes } = drawing;
  const things = groupsIn(shapes);
  const [stop, setStop] = useState<string | undefined>();
  const current = innermost(things, line)?.key;
  const reachable = things.some(({ key }) => key === stop) ? stop : things[0]?.key;
  // Arrows go from thing to thing in the order they are drawn.
  const walk = (event: KeyboardEvent & { readonly currentTarget: SVGSVGElement }) => {
    const from = things.findIndex(({ key }) => key === reachable);
    const next = ledTo(event.key, things, from, { ...sideways, ...upAndDown });
    if (!next) return;
    event.preventDefault();
    setStop(next.key);
    event.currentTarget.querySelector<SVGElement>(`[data-key="${CSS.escape(next.key)}"]`)?.focus();
  };
  return (
    <figure>
      <figcaption>
        <h1>{title}</h1>
        <p class="note">{description}</p>
      </figcaption>
      <div class="paper">
        <svg
          aria-label={title}
          viewBox={`0 0 ${width} ${height}`}
          width={width * (zoom ?? 1)}
          height={height * (zoom ?? 1)}
          {...(zoom === undefined ? { class: "fitted", style: { minWidth: `${Math.round(width * smallest)}px` } } : {})}
          onKeyDown={walk}
          onFocusIn={(event) => {
            const key = event.target instanceof SVGElement ? event.target.getAttribute("data-key") : null;
            if (key) setStop(key);
          }}
        >
          <Shapes shapes={shapes} reveal={reveal} stop={reachable} current={current} />
        </svg>
      </div>
      {notes.map((note) => (
        <p key={note} class="note">
          {note}
        </p>
      ))}
      {table ? <AsTable table={table} title={title} reveal={reveal} /> : null}
    </figure>
  );
}

function groupsIn(shapes: Placed<Drawing>["shapes"]): PlacedGroup[] {
  return shapes.flatMap((shape) =>
    shape.kind === "group" ? [...(shape.mark ? [shape] : []), ...groupsIn(shape.shapes)] : [],
  );
}

/** The smallest thing of the drawing that the cursor's line is in. */
function innermost(things: readonly PlacedGroup[], line: number): PlacedGroup | undefined {
  return things
    .filter(({ mark }) => mark && !mark.uri && line >= mark.line && line <= mark.last)
    .toSorted((a, b) => (a.mark ? a.mark.last - a.mark.line : 0) - (b.mark ? b.mark.last - b.mark.line : 0))[0];
}

function AsTable({
  table,
  title,
  reveal,
}: { readonly table: Placed<DrawingTable>; readonly title: string } & Pick<Props, "reveal">) {
  return (
    <details>
      <summary>The same as a table</summary>
      <div class="paper">
        <table class="plain" aria-label={title}>
          <thead>
            <tr>
              {table.head.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row, at) => (
              <tr key={row[0]?.text ?? at}>
                {row.map(({ text, mark }, column) => (
                  <td key={table.head[column] ?? column}>
                    <Go at={mark} reveal={reveal}>
                      {text}
                    </Go>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
