/** A board as rows: quiet where all is well, so that the eye falls on what is to be done. */
import { useState } from "preact/hooks";
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { BoardRow, BoardView, FoundLine, ReadingCell } from "../../server/views/board.ts";
import { GaugeBar } from "./gauge.tsx";
import { ledTo, upAndDown } from "./keys.ts";
import type { Chosen } from "./state.ts";

type Row = Placed<BoardRow>;

interface Props {
  readonly board: Placed<BoardView>;
  readonly chosen: Chosen;
  readonly choose: (change: (before: Chosen) => Chosen) => void;
  readonly reveal: (at: At) => void;
  readonly line: number;
}

export function Board({ board, chosen, choose, reveal, line }: Props) {
  const rows = board.rows.filter((row) => !chosen.onlyOpen || isToDo(row));
  const sorted = chosen.sort === "margin" ? rows.toSorted((a, b) => urgency(b) - urgency(a)) : rows;
  return (
    <>
      <div class="above">
        <h1>
          <Go at={board.mark} reveal={reveal}>
            {board.title}
          </Go>
        </h1>
        <Figures board={board} reveal={reveal} />
        <Choices board={board} chosen={chosen} choose={choose} />
        <FoundList found={board.findings} reveal={reveal} />
      </div>
      {sorted.length === 0 ? (
        <p class="note">{board.rows.length === 0 ? "No way is written yet." : "Nothing is left to do here."}</p>
      ) : (
        <Table rows={sorted} reveal={reveal} line={line} />
      )}
    </>
  );
}

const Figures = ({ board, reveal }: Pick<Props, "board" | "reveal">) => (
  <p class="figures">
    {board.figures.map(({ name, text, calculated, mark }) => (
      <span key={name} class={calculated ? "calculated" : ""}>
        <span class="unit">{name} </span>
        <Go at={mark} reveal={reveal}>
          {text}
        </Go>
      </span>
    ))}
  </p>
);

/** Which ways are shown, and in which order. */
const Choices = ({ board, chosen, choose }: Pick<Props, "board" | "chosen" | "choose">) => (
  <div class="tools">
    <label>
      <input
        type="checkbox"
        checked={chosen.onlyOpen}
        onChange={(event) => {
          const { checked } = event.currentTarget;
          choose((before) => ({ ...before, onlyOpen: checked }));
        }}
      />
      Only ways with something to do ({board.rows.filter(isToDo).length})
    </label>
    <label>
      <span>Sort by </span>
      <select
        value={chosen.sort}
        onChange={(event) => {
          const sort = event.currentTarget.value === "margin" ? "margin" : "order";
          choose((before) => ({ ...before, sort }));
        }}
      >
        <option value="order">order of ways</option>
        <option value="margin">least margin</option>
      </select>
    </label>
  </div>
);

const isToDo = ({ findings, missing }: Row): boolean =>
  missing.length > 0 || findings.some(({ severity }) => severity !== "information");

/** What is over its limit comes before what may be, and both before every share of a limit that is used. */
const urgencies: Readonly<Record<string, number>> = { beyond: 1e9, unproven: 1e6 };
const urgency = ({ least }: Row): number => (least ? least.used + (urgencies[least.standing] ?? 0) : -1);

function Table({ rows, reveal, line }: { readonly rows: readonly Row[] } & Pick<Props, "reveal" | "line">) {
  return (
    <table class="board" aria-label="Ways" onKeyDown={walk}>
      <thead>
        <tr>
          {["Way", "Device and cable", "Readings", "Least margin", "To do"].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <WayRow key={row.key} row={row} reveal={reveal} current={line >= row.mark.line && line <= row.mark.last} />
        ))}
      </tbody>
    </table>
  );
}

/** Up and down go from way to way. */
function walk(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  if (!(event.key in upAndDown && event.target instanceof HTMLElement && event.target.matches("th .go"))) return;
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>("th .go")];
  ledTo(event.key, all, all.indexOf(event.target), upAndDown)?.focus();
  event.preventDefault();
}

function WayRow({ row, reveal, current }: { readonly row: Row; readonly current: boolean } & Pick<Props, "reveal">) {
  return (
    <tr class={current ? "current" : ""} aria-current={current ? "true" : undefined}>
      <th scope="row">
        <Go at={row.mark} reveal={reveal}>
          <span class="number">{row.id}</span>{" "}
          <span class="serves">{row.spare ? "spare" : row.title || row.kind || "unnamed"}</span>
        </Go>
      </th>
      <td class="parts">
        {row.spare ? null : (
          <>
            <Value text={row.device} name="device" />
            <Value text={row.cable} name="cable" />
          </>
        )}
      </td>
      <td>
        <ul class="readings">
          {row.readings
            .filter(({ state }) => state !== "missing")
            .map((cell) => (
              <Reading key={cell.name} cell={cell} reveal={reveal} />
            ))}
        </ul>
      </td>
      <td class="margin">
        <Margin row={row} reveal={reveal} />
      </td>
      <td>
        {row.missing.length > 0 ? <span class="missing">{row.missing.join(", ")}</span> : null}
        <FoundList found={row.findings} reveal={reveal} />
      </td>
    </tr>
  );
}

function Margin({ row: { least, spare }, reveal }: { readonly row: Row } & Pick<Props, "reveal">) {
  if (!least) return spare ? null : <span class="note">nothing to compare</span>;
  return (
    <Go at={least.mark} reveal={reveal} title={`${least.name} ${least.text}, ${least.left}`}>
      <GaugeBar gauge={least} />
      <span class={`remark ${least.standing} ${least.calculated ? "calculated" : ""}`}>
        {`${least.name} ${least.left}`}
      </span>
    </Go>
  );
}

const Value = ({ text, name }: { readonly text: string; readonly name: string }) =>
  text === "" ? <span class="missing">no {name}</span> : <span class={name}>{text}</span>;

const stateWords = {
  measured: "",
  calculated: "calculated",
  declared: "declared",
  "from-record": "from a record",
  limited: "not measured, limited",
  "not-applicable": "not applicable",
  missing: "missing",
} as const;

function Reading({ cell, reveal }: { readonly cell: Placed<ReadingCell> } & Pick<Props, "reveal">) {
  const { name, text, state, gauge, failed, mark } = cell;
  const words = [name, text, stateWords[state], gauge ? `${gauge.text}, ${gauge.left}` : ""]
    .filter((one) => one !== "")
    .join(", ");
  return (
    <li>
      <Go at={mark} reveal={reveal} title={words}>
        <span class="unit">{name} </span>
        <span class={`figure ${state} ${failed ? "beyond" : (gauge?.standing ?? "")}`}>{text}</span>
        {state === "declared" || state === "from-record" ? <span class="unit"> {stateWords[state]}</span> : null}
      </Go>
    </li>
  );
}

const signs = { error: "✗", warning: "!", information: "i" } as const;
const severityNames = { error: "error", warning: "warning", information: "remark" } as const;

/** Shut, it says how many there are; open, each of them, and each leads to its line. */
export function FoundList({ found, reveal }: { readonly found: readonly Placed<FoundLine>[] } & Pick<Props, "reveal">) {
  const [open, setOpen] = useState(false);
  const grave = found.filter(({ severity }) => severity !== "information");
  if (found.length === 0) return null;
  const words = (["error", "warning", "information"] as const)
    .map((severity) => [severity, found.filter((one) => one.severity === severity).length] as const)
    .filter(([, count]) => count > 0)
    .map(([severity, count]) => `${count} ${severityNames[severity]}${count === 1 ? "" : "s"}`)
    .join(", ");
  const worst = found.some(({ severity }) => severity === "error")
    ? "error"
    : grave.length > 0
      ? "warning"
      : "information";
  return (
    <div class="found">
      <button type="button" aria-expanded={open} class={`count ${worst}`} onClick={() => setOpen(!open)}>
        {`${signs[worst]} ${words}`}
      </button>
      {open ? (
        <ul>
          {found.map((one) => (
            <li key={`${one.check}|${one.mark.line}|${one.message}`}>
              <Go at={one.mark} reveal={reveal}>
                <span class={one.severity}>{signs[one.severity]} </span>
                {one.message}
              </Go>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

interface GoProps {
  readonly at: At | undefined;
  readonly reveal: (at: At) => void;
  /** Shown beside the pointer. */
  readonly title?: string;
  readonly children: preact.ComponentChildren;
}

/** Leads to a line of the schedule; what stands in none is only shown. */
export function Go({ at, reveal, title, children }: GoProps) {
  if (!at) return <>{children}</>;
  return (
    <button type="button" class="go" onClick={() => reveal(at)} {...(title === undefined ? {} : { title })}>
      {children}
    </button>
  );
}
