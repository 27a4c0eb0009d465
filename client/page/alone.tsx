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

function Alone() {
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

  const edited = (): void => {
    server.current?.change(area.current?.value ?? "");
    void host?.show();
  };
  const open = async (files: FileList | null): Promise<void> => {
    const [file] = files ?? [];
    if (!file || !area.current) return;
    area.current.value = await file.text();
    edited();
  };
  const grave = found.filter(({ severity }) => severity <= 2).toSorted((a, b) => a.severity - b.severity);
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
          onKeyUp={() => void host?.show()}
          onClick={() => void host?.show()}
        />
        <h2>{`${grave.length === 0 ? "No error and no warning" : `${grave.length} to look at`}`}</h2>
        <ul class="list" aria-live="polite">
          {grave.map(({ severity, message, range }, at) => (
            <li key={`${at}|${message}`}>
              <button type="button" class="go" onClick={() => area.current && goTo(area.current, range.start)}>
                <span
                  class={severities[severity] ?? ""}
                >{`${severities[severity]}, line ${range.start.line + 1}: `}</span>
                {message}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <div class="shown">{host ? <App host={host} /> : <p class="note">The program is starting …</p>}</div>
    </div>
  );
}

const root = document.getElementById("app");
if (root) render(<Alone />, root);
