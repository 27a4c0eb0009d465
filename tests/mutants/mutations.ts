/** One token of a source file changed, where the change could matter. */
import { stripTypeScriptTypes } from "node:module";
import { parseAst } from "vitest/node";

interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Mutation extends Span {
  /** What stands there instead. */
  readonly by: string;
  /** The expression it is part of, which is calculated in the one way or the other. */
  readonly within: Span;
  /** Where that is no expression but a name: behind a point, or before a colon. */
  readonly names?: "member" | "key";
}

interface Node extends Span {
  readonly type: string;
  readonly [key: string]: unknown;
}

const operators: Readonly<Record<string, string>> = {
  "<": "<=",
  "<=": "<",
  ">": ">=",
  ">=": ">",
  "===": "!==",
  "!==": "===",
  "+": "-",
  "-": "+",
  "*": "/",
  "/": "*",
  "&&": "||",
  "||": "&&",
};

const methods: Readonly<Record<string, string>> = { some: "every", every: "some", max: "min", min: "max" };

/** Every mutation of a TypeScript source. Types and texts are left alone. */
export function mutationsOf(source: string): Mutation[] {
  // Types become blanks, so that places stay what they are.
  const code = stripTypeScriptTypes(source);
  const found: Mutation[] = [];
  visit(parseAst(code) as unknown as Node, code, found);
  return found;
}

function visit(node: Node, code: string, found: Mutation[]): void {
  found.push(...mutationsAt(node, code));
  const named = node.type === "Property" && !node.computed ? node.key : undefined;
  for (const child of Object.values(node)) {
    for (const one of Array.isArray(child) ? child : [child]) {
      if (!isNode(one)) continue;
      if (one !== named) visit(one, code, found);
      else if (one.type === "Literal")
        found.push(...literal(one).map((mutation) => ({ ...mutation, names: "key" as const })));
    }
  }
}

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as { type?: unknown }).type === "string";

const span = ({ start, end }: Node): Span => ({ start, end });

function mutationsAt(node: Node, code: string): Mutation[] {
  switch (node.type) {
    case "BinaryExpression":
    case "LogicalExpression":
      return operatorOf(node, code);
    case "UnaryExpression":
      return node.operator === "!" ? [{ start: node.start, end: node.start + 1, by: "", within: span(node) }] : [];
    case "ConditionalExpression": {
      const test = node.test as Node;
      return [{ ...span(test), by: `!(${code.slice(test.start, test.end)})`, within: span(test) }];
    }
    case "MemberExpression": {
      const property = node.property as Node & { readonly name?: string };
      const by = property.name === undefined || node.computed ? undefined : methods[property.name];
      return by === undefined ? [] : [{ ...span(property), by, within: span(property), names: "member" }];
    }
    case "Literal":
      return literal(node);
    default:
      return [];
  }
}

function operatorOf(node: Node, code: string): Mutation[] {
  const { left, right, operator } = node;
  const by = operators[operator as string];
  const [before, after] = [left as Node, right as Node];
  // Texts are put together with it.
  if (
    by === undefined ||
    [before, after].some(({ type, value }) => type === "TemplateLiteral" || typeof value === "string")
  )
    return [];
  const start = code.indexOf(operator as string, before.end);
  if (start < 0 || start >= after.start) return [];
  return [{ start, end: start + (operator as string).length, by, within: span(node) }];
}

function literal(node: Node): Mutation[] {
  const { value, start, end } = node;
  const by = (changed: unknown): Mutation[] => [{ start, end, by: String(changed), within: span(node) }];
  if (typeof value === "boolean") return by(!value);
  if (typeof value !== "number") return [];
  return by(Number.isInteger(value) ? value + 1 : Number((value * 1.1).toPrecision(6)));
}

/** A mutation with the number by which it is switched on. */
interface Numbered extends Mutation {
  readonly number: number;
}

/**
 * A source with all of the mutations in it, each asleep until `isMutant` says otherwise: it is read once for all of them,
 * and what asks that function shows which tests come by.
 */
export function woven(source: string, mutations: readonly Numbered[]): string {
  const outermost = mutations.toSorted(
    (a, b) => a.within.start - b.within.start || b.within.end - a.within.end || a.number - b.number,
  );
  return wovenPart(source, { start: 0, end: source.length }, outermost);
}

function wovenPart(source: string, { start, end }: Span, mutations: readonly Numbered[]): string {
  let text = "";
  let at = start;
  for (let next = 0; next < mutations.length; ) {
    const mutation = mutations[next] as Numbered;
    const { within } = mutation;
    let last = next + 1;
    while (last < mutations.length && (mutations[last] as Numbered).within.start < within.end) last++;
    const inner = mutations.slice(next + 1, last);
    text += source.slice(at, within.start);
    text = switched(text, mutation, source, wovenPart(source, within, inner));
    at = within.end;
    next = last;
  }
  return text + source.slice(at, end);
}

/** What stands before, and the expression in both ways behind it. */
function switched(before: string, mutation: Numbered, source: string, otherwise: string): string {
  const { start, end, by, within, number, names } = mutation;
  // What is built of it, and runs where nobody decides, is as it was.
  const asked = `(globalThis as any).isMutant?.(${number})`;
  if (names === "key") return `${before}[${asked} ? ${by} : ${otherwise}]`;
  if (names === "member") {
    const joined = before.endsWith("?.") ? before : before.replace(/\.\s*$/, "");
    return `${joined}[${asked} ? "${by}" : "${source.slice(start, end)}"]`;
  }
  const mutated = source.slice(within.start, start) + by + source.slice(end, within.end);
  return `${before}(${asked} ? (${mutated}) : (${otherwise}))`;
}
