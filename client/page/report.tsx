/** A report, live. */
import type { At, Placed } from "../../server/lsp/placed.ts";
import type { ReportBlock, ReportView } from "../../server/views/report.ts";
import { Picture } from "./drawing.tsx";
import { Wide } from "./wide.tsx";

interface Props {
  readonly report: Placed<ReportView>;
  readonly reveal: (at: At) => void;
  readonly line: number;
}

export function Report({ report, reveal, line }: Props) {
  const { title, lead, sections, cautions } = report;
  return (
    <article>
      <h1>{title}</h1>
      {lead.map((words) => (
        <p key={words} class="note">
          {words}
        </p>
      ))}
      {sections.map((section, at) => {
        const Title = section.level === 1 ? "h2" : "h3";
        return (
          <section key={`${section.title}|${at}`}>
            {section.title === "" ? null : <Title>{section.title}</Title>}
            {section.blocks.map((block, index) => (
              <Block key={index} block={block} reveal={reveal} line={line} />
            ))}
          </section>
        );
      })}
      <p class="note cautions">{cautions}</p>
    </article>
  );
}

type Tone = Extract<ReportBlock, { kind: "words" }>["tone"];
const marks: Readonly<Partial<Record<Tone, string>>> = { holds: "✓", fails: "✗", unproven: "~", advises: "!" };

function Block({ block, reveal, line }: { readonly block: Placed<ReportBlock> } & Pick<Props, "reveal" | "line">) {
  switch (block.kind) {
    case "words": {
      const { tone, text } = block;
      const mark = marks[tone];
      return <p class={`words ${tone}`}>{mark === undefined ? text : `${mark} ${text}`}</p>;
    }
    case "calculation":
      return <Calculation block={block} />;
    case "drawing":
      return (
        <>
          <Picture drawing={block.drawing} reveal={reveal} line={line} />
          <p class="note">{block.caption}</p>
        </>
      );
    case "table":
      return <Table block={block} />;
  }
}

type BlockOf<Kind extends ReportBlock["kind"]> = Extract<Placed<ReportBlock>, { readonly kind: Kind }>;

const Calculation = ({ block }: { readonly block: BlockOf<"calculation"> }) => (
  <div class="calculation">
    <p>
      {block.name} <b>{block.result}</b>
    </p>
    {block.lines.length === 0 ? null : (
      <ol>
        {block.lines.map((words, at) => (
          <li key={at}>{words}</li>
        ))}
      </ol>
    )}
    {block.source === "" ? null : <p class="note">{block.source}</p>}
  </div>
);

const Table = ({ block }: { readonly block: BlockOf<"table"> }) => (
  <Wide>
    <table class="plain">
      {block.head.every((name) => name === "") ? null : (
        <thead>
          <tr>
            {block.head.map((name, at) => (
              <th key={at} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {block.rows.map((row, at) => (
          <tr key={at}>
            {row.map((text, column) => (
              <td key={column}>{text}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </Wide>
);
