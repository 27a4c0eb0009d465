/** The live view: one board in one of several views, beside the text it is made of. */
import { render } from "preact";
import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { At } from "../../server/lsp/placed.ts";
import type { ViewAnswer } from "../../server/lsp/view-protocol.ts";
import type { ViewKind } from "../../server/views/kinds.ts";
import { Board } from "./board.tsx";
import { Drawings } from "./drawing.tsx";
import { Grid } from "./grid.tsx";
import type { Entered, Host, ToPage } from "./messages.ts";
import { Report } from "./report.tsx";
import { type Chosen, chosenFrom, views } from "./state.ts";

interface Shown {
  readonly view: ViewKind;
  readonly answer: ViewAnswer;
}

export function start(host: Host, root: Element): void {
  render(<App host={host} />, root);
}

export function App({ host }: { readonly host: Host }) {
  const [chosen, setChosen] = useState<Chosen>(() => chosenFrom(host.load()));
  const [shown, setShown] = useState<Shown | undefined>();
  const [trouble, setTrouble] = useState("");
  const [line, setLine] = useState(-1);
  const [entered, setEntered] = useState<Entered | undefined>();

  useEffect(() => {
    host.receive((message: ToPage) => {
      if (message.kind === "cursor") setLine(message.line);
      else if (message.kind === "entered") setEntered(message.entered);
      else if (message.kind === "failed") setTrouble(message.message);
      else take(message);
    });
    // The last good picture stays where the text is so broken that there is no board in it.
    function take({ view, answer }: Shown): void {
      setTrouble(answer.nothing ?? "");
      if (answer.content) setShown({ view, answer });
    }
  }, [host]);
  useEffect(() => {
    host.send({ kind: "show", view: chosen.view, ...(chosen.board === undefined ? {} : { board: chosen.board }) });
  }, [host, chosen.view, chosen.board]);

  const choose = useCallback(
    (change: (before: Chosen) => Chosen) =>
      setChosen((before) => {
        const after = change(before);
        host.save(after);
        return after;
      }),
    [host],
  );
  const reveal = useCallback((at: At) => host.send({ kind: "reveal", at }), [host]);
  const content = shown?.answer.content;

  return (
    <>
      <Head chosen={chosen} choose={choose} answer={shown?.answer} />
      {trouble === "" ? null : (
        <p class="trouble" role="status">
          {trouble}
        </p>
      )}
      <main class={trouble === "" ? "" : "stale"}>
        <div id="view" role="tabpanel" aria-labelledby={`tab-${chosen.view}`}>
          {content?.kind === "board" ? (
            <Board board={content} chosen={chosen} choose={choose} reveal={reveal} line={line} />
          ) : content?.kind === "drawings" ? (
            <Drawings view={content} chosen={chosen} choose={choose} reveal={reveal} line={line} />
          ) : content?.kind === "grid" ? (
            <Grid
              key={shown?.answer.board}
              grid={content}
              reveal={reveal}
              entered={entered}
              enter={(entry) => host.send({ kind: "enter", board: shown?.answer.board ?? "", ...entry })}
              undo={() => host.send({ kind: "undo" })}
            />
          ) : content?.kind === "report" ? (
            <Report report={content} reveal={reveal} line={line} />
          ) : (
            <p class="note">{trouble === "" ? "The schedule is being read …" : ""}</p>
          )}
        </div>
      </main>
    </>
  );
}

interface HeadProps {
  readonly chosen: Chosen;
  readonly choose: (change: (before: Chosen) => Chosen) => void;
  readonly answer: ViewAnswer | undefined;
}

function Head({ chosen, choose, answer }: HeadProps) {
  const boards = answer?.boards ?? [];
  const pick = (event: { readonly currentTarget: HTMLSelectElement }) => {
    const { value } = event.currentTarget;
    choose(({ board: _, ...before }) => (value === "" ? before : { ...before, board: value }));
  };
  const following = boards.find(({ key }) => key === answer?.board);
  return (
    <header>
      <Tabs chosen={chosen} choose={choose} />
      <label class="pick">
        <span>Board </span>
        <select value={chosen.board ?? ""} onChange={pick}>
          <option value="">
            {following ? `at the cursor: ${following.name} ${following.title}`.trim() : "at the cursor"}
          </option>
          {boards.map(({ key, name, title }) => (
            <option key={key} value={key}>
              {`${name} ${title}`.trim()}
            </option>
          ))}
        </select>
      </label>
    </header>
  );
}

/** One stop for the Tab key; the arrows go from view to view. */
function Tabs({ chosen, choose }: Pick<HeadProps, "chosen" | "choose">) {
  const at = useMemo(() => views.findIndex(([kind]) => kind === chosen.view), [chosen.view]);
  const go = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    const to =
      event.key === "Home"
        ? 0
        : event.key === "End"
          ? views.length - 1
          : step
            ? (at + step + views.length) % views.length
            : -1;
    const view = views[to]?.[0];
    if (!view) return;
    event.preventDefault();
    choose((before) => ({ ...before, view }));
    document.getElementById(`tab-${view}`)?.focus();
  };
  return (
    <div role="tablist" aria-label="Views" onKeyDown={go}>
      {views.map(([kind, name]) => (
        <button
          key={kind}
          id={`tab-${kind}`}
          type="button"
          role="tab"
          aria-selected={kind === chosen.view}
          aria-controls="view"
          tabIndex={kind === chosen.view ? 0 : -1}
          onClick={() => choose((before) => ({ ...before, view: kind }))}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
