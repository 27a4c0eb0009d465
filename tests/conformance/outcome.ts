/** What a text is to a reader of the language: its statements, what they say, and what is wrong with them. */
import { parse, type Statement } from "../../grammar/parser.ts";
import type { BoardHead, FileModel, Way } from "../../server/model/file.ts";
import type { AnyValue, Fact, Facts } from "../../server/model/values.ts";
import { Positions } from "../../server/syntax/document.ts";
import type { Segment } from "../../server/syntax/split.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

/** A statement: its word and arguments, each token by kind and letters, and those of its block. */
interface TreeNode {
  readonly line: string[];
  readonly block?: TreeNode[];
}

/** What a statement says: its word, its values by the names of the parameters, and the facts of its block. */
interface FactNode {
  readonly word: string;
  readonly says?: Readonly<Record<string, unknown>>;
  readonly from?: string;
  readonly facts?: FactNode[];
  readonly struckOut?: FactNode[];
}

type ErrorRow = readonly [id: string, line: number, column: number, endLine: number, endColumn: number];

export interface Outcome {
  readonly tree: TreeNode[];
  readonly facts: FactNode[];
  readonly errors: ErrorRow[];
}

const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };

export function outcomeOf(text: string): Outcome {
  const file = fileOfText("case.ways", text);
  return { tree: treeOf(file.document.segments), facts: factsOf(file.model), errors: errorsOf(text) };
}

function treeOf(segments: readonly Segment[]): TreeNode[] {
  const top: TreeNode[] = [];
  const open: TreeNode[][] = [];
  for (const segment of segments) {
    for (let ended = segment.ends ?? 0; ended > 0; ended--) open.pop();
    if (segment.kind === "open" && !(segment.word === "board" && open.length === 1)) open.length = 0;
    const nodes = parse(segment.text, segment.mends).statements.map(nodeOf);
    (open.at(-1) ?? top).push(...nodes);
    const [first] = nodes;
    if (segment.kind === "open") open.push(first?.block ?? []);
    if (segment.kind === "close" && segment.fault !== "extra-close") open.pop();
  }
  return top;
}

function nodeOf({ word, args, block }: Statement): TreeNode {
  const line = [word, ...args].map(({ tokenType, image }) => `${tokenType.name} ${image}`);
  return block ? { line, block: block.statements.map(nodeOf) } : { line };
}

const factsOf = ({ facts, installations, boards }: FileModel): FactNode[] => [
  ...nodesOf(facts),
  ...installations.map(({ head, boards: own }) => ({
    ...plain(head.header),
    facts: [...nodesOf(head.facts), ...own.map(({ head: of, ways }) => boardNode(of, ways))],
  })),
  ...boards.map(({ head, ways }) => boardNode(head, ways)),
];

const boardNode = (head: BoardHead, ways: readonly Way[]): FactNode => ({
  ...plain(head.header),
  facts: [...nodesOf(head.facts), ...ways.map((way) => ({ ...plain(way.header), ...inner(way.facts) }))],
});

const nodesOf = (facts: Facts): FactNode[] =>
  facts.list.map((fact) => ({ ...plain(fact), ...(fact.inner ? inner(fact.inner) : {}) }));

function inner(facts: Facts): Pick<FactNode, "facts" | "struckOut"> {
  const struckOut = facts.struckOut.map((fact) => ({ ...plain(fact), ...(fact.inner ? inner(fact.inner) : {}) }));
  return { facts: nodesOf(facts), ...(struckOut.length > 0 ? { struckOut } : {}) };
}

function plain({ word, args, provenance, record, corrections }: Fact): FactNode {
  const says = Object.entries(args).flatMap(([name, value]): [string, unknown][] =>
    value === undefined ? [] : [[name, Array.isArray(value) ? value.map(plainValue) : plainValue(value as AnyValue)]],
  );
  const was = corrections?.map((one) => [one.was, one.why]);
  const from = provenance === "measured" ? undefined : [provenance, record].filter(Boolean).join(" ");
  const all = [...says, ...(was ? [["was", was] as [string, unknown]] : [])];
  return { word, ...(all.length > 0 ? { says: Object.fromEntries(all) } : {}), ...(from ? { from } : {}) };
}

/** A quantity in the base unit of its kind, with its sign before it where it is a bound. */
function plainValue(value: AnyValue): unknown {
  if ("absent" in value) return value.why === undefined ? value.absent : `${value.absent} ${value.why}`;
  if ("legs" in value) return [value.from.value, ...value.legs.flatMap(({ length, to }) => [length.value, to.value])];
  if ("curve" in value) return `${value.curve}${value.rating}`;
  if ("sign" in value) return value.sign === "=" ? value.value : `${value.sign}${value.value}`;
  return value.value;
}

function errorsOf(text: string): ErrorRow[] {
  const file = fileOfText("case.ways", text);
  const positions = new Positions(file.document);
  const own = checkProject(file, alone).files.find((entry) => entry.file === file);
  return (own?.findings ?? []).flatMap(({ check, spot }): ErrorRow[] => {
    if (!check.startsWith("language/")) return [];
    const start = positions.place(spot.segment, spot.start);
    const end = positions.place(spot.segment, spot.end);
    return [[check.slice("language/".length), start.line + 1, start.character + 1, end.line + 1, end.character + 1]];
  });
}
