/**
 * A page of its own: a schedule is pasted and checked with no editor at all. The language server runs in a worker of the
 * browser, the same as in an editor on the web; the page may fetch nothing, so nothing leaves the machine.
 */
import { render } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { AreaHost, goTo } from "./alone-host.ts";
import { type Found, Server } from "./alone-server.ts";
import { App } from "./app.tsx";

declare const sampleText: string;

const severities = ["", "error", "warning", "remark"] as const;

/** The schedule in its field, what was found in it, and the server that checks it. */
function useSchedule() {
  const area = useRef<HTMLTextAreaElement>(null);
  const [found, setFound] = useState<readonly Found[]>([]);
  const [host, setHost] = useState<AreaHost | undefined>();
  const server = useRef<Server | undefined>(undefined);

  useEffect(() => {
    const { current: field } = area;
    if (!field) return;
    const started = new Server(setFound);
    server.current = started;
    void started.start(field.value).then(() => setHost(new AreaHost(started, field)));
  }, []);

  const follow = (): void => void host?.show();
  const edited = (): void => {
    server.current?.change(area.current?.value ?? "");
    follow();
  };
  const open = async (files: FileList | null): Promise<void> => {
    const [file] = files ?? [];
    if (!file || !area.current) return;
    area.current.value = await file.text();
    edited();
  };
  return { area, found, host, follow, edited, open };
}

function Alone() {
  const { area, found, host, follow, edited, open } = useSchedule();
  return (
    <div class="alone">
      <section class="written" aria-labelledby="written">
        <h2 id="written">The schedule</h2>
        <p class="note">
          Paste it here, or{" "}
          <label class="file">
            open a file
            <input type="file" accept=".ways,text/plain" onChange={(event) => void open(event.currentTarget.files)} />
          </label>
          . It is checked on this machine and sent nowhere.
        </p>
        <textarea
          ref={area}
          spellcheck={false}
          aria-labelledby="written"
          defaultValue={sampleText}
          onInput={edited}
          onKeyUp={follow}
          onClick={follow}
        />
        <FoundHere found={found} go={({ range }) => area.current && goTo(area.current, range.start)} />
      </section>
      <div class="shown">{host ? <App host={host} /> : <p class="note">The program is starting …</p>}</div>
    </div>
  );
}

/** Errors and warnings, the gravest first; a remark waits for the views beside. */
function FoundHere({ found, go }: { readonly found: readonly Found[]; readonly go: (one: Found) => void }) {
  const grave = found.filter(({ severity }) => severity <= 2).toSorted((a, b) => a.severity - b.severity);
  return (
    <>
      <h2>{grave.length === 0 ? "No error and no warning" : `${grave.length} to look at`}</h2>
      <ul class="list" aria-live="polite">
        {grave.map((one, at) => (
          <li key={`${at}|${one.message}`}>
            <button type="button" class="go" onClick={() => go(one)}>
              <span class={severities[one.severity] ?? ""}>
                {`${severities[one.severity]}, line ${one.range.start.line + 1}: `}
              </span>
              {one.message}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

const root = document.getElementById("app");
if (root) render(<Alone />, root);
