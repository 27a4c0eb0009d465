/** The live view: one board in one of several views, beside the text it is made of. */
import { render } from "preact";
import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { At } from "../../server/lsp/placed.ts";
import type { ViewAnswer } from "../../server/lsp/view-protocol.ts";
import { Board } from "./board.tsx";
import { Drawings } from "./drawing.tsx";
import { Grid } from "./grid.tsx";
import { ledTo, sideways } from "./keys.ts";
import type { Entered, Host, ToPage } from "./messages.ts";
import { Report } from "./report.tsx";
import { type Chosen, chosenFrom, views } from "./state.ts";

export function start(host: Host, root: Element): void {
  render(<App host={host} />, root);
}

export function App({ host }: { readonly host: Host }) {
  const [chosen, setChosen] = useState<Chosen>(() => chosenFrom(host.load()));
  const { answer, trouble, line, entered } = useView(host, chosen);
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
  return (
    <>
      <Head chosen={chosen} choose={choose} answer={answer} />
      {trouble === "" ? null : (
        <p class="trouble" role="status">
          {trouble}
        </p>
      )}
      <main class={trouble === "" ? "" : "stale"}>
        <div id="view" role="tabpanel" aria-labelledby={`tab-${chosen.view}`}>
          {answer?.content ? (
            <Content {...{ host, chosen, choose, reveal, line, entered }} {...answer} />
          ) : (
            <p class="note">{trouble === "" ? "The schedule is being read …" : ""}</p>
          )}
        </div>
      </main>
    </>
  );
}

interface View {
  /** The last good picture: it stays where the text is so broken that there is no board in it. */
  readonly answer: ViewAnswer | undefined;
  /** Why there is no newer one; empty where there is. */
  readonly trouble: string;
  /** Where the cursor is in the schedule, from 0; below 0 while it is not known. */
  readonly line: number;
  readonly entered: Entered | undefined;
}

/** What the host has sent of the view that was chosen. */
function useView(host: Host, { view, board }: Chosen): View {
  const [state, setState] = useState<View>({ answer: undefined, trouble: "", line: -1, entered: undefined });
  useEffect(() => host.receive((message) => setState((before) => received(before, message))), [host]);
  useEffect(() => {
    host.send({ kind: "show", view, ...(board === undefined ? {} : { board }) });
  }, [host, view, board]);
  return state;
}

function received(before: View, message: ToPage): View {
  switch (message.kind) {
    case "cursor":
      return { ...before, line: message.line };
    case "entered":
      return { ...before, entered: message.entered };
    case "failed":
      return { ...before, trouble: message.message };
    case "view": {
      const { answer } = message;
      return { ...before, trouble: answer.nothing ?? "", ...(answer.content ? { answer } : {}) };
    }
  }
}

interface ContentProps extends Pick<ViewAnswer, "board" | "content"> {
  readonly host: Host;
  readonly chosen: Chosen;
  readonly choose: (change: (before: Chosen) => Chosen) => void;
  readonly reveal: (at: At) => void;
  readonly line: number;
  readonly entered: Entered | undefined;
}

function Content({ host, board = "", content, chosen, choose, reveal, line, entered }: ContentProps) {
  switch (content?.kind) {
    case "board":
      return <Board board={content} {...{ chosen, choose, reveal, line }} />;
    case "drawings":
      return <Drawings view={content} {...{ chosen, choose, reveal, line }} />;
    case "grid":
      return (
        <Grid
          key={board}
          grid={content}
          {...{ reveal, entered }}
          enter={(entry) => host.send({ kind: "enter", board, ...entry })}
          undo={() => host.send({ kind: "undo" })}
        />
      );
    case "report":
      return <Report report={content} {...{ reveal, line }} />;
    default:
      return null;
  }
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
    // From the last view to the first, and back.
    const round = [views.at(-1), ...views, views[0]];
    const [view] = ledTo(event.key, event.key in sideways ? round : views, at + 1, sideways) ?? [];
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
