/** One token of a source file changed, where the change could matter. */
import { stripTypeScriptTypes } from "node:module";
import { parseAst } from "vitest/node";

export interface Mutation {
  readonly start: number;
  readonly end: number;
  /** What stands there instead. */
  readonly by: string;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
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
  for (const child of Object.values(node)) {
    for (const one of Array.isArray(child) ? child : [child]) if (isNode(one)) visit(one, code, found);
  }
}

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as { type?: unknown }).type === "string";

function mutationsAt(node: Node, code: string): Mutation[] {
  switch (node.type) {
    case "BinaryExpression":
    case "LogicalExpression":
      return operatorOf(node, code);
    case "UnaryExpression":
      return node.operator === "!" ? [{ start: node.start, end: node.start + 1, by: "" }] : [];
    case "ConditionalExpression": {
      const test = node.test as Node;
      return [{ start: test.start, end: test.end, by: `!(${code.slice(test.start, test.end)})` }];
    }
    case "MemberExpression": {
      const { name, start, end } = node.property as Node & { readonly name?: string };
      const other = name === undefined || node.computed ? undefined : methods[name];
      return other === undefined ? [] : [{ start, end, by: other }];
    }
    case "Literal":
      return literal(node);
    default:
      return [];
  }
}

function operatorOf({ left, right, operator }: Node, code: string): Mutation[] {
  const by = operators[operator as string];
  const [before, after] = [left as Node, right as Node];
  // Texts are put together with it.
  if (
    by === undefined ||
    [before, after].some(({ type, value }) => type === "TemplateLiteral" || typeof value === "string")
  )
    return [];
  const start = code.indexOf(operator as string, before.end);
  return start < 0 || start >= after.start ? [] : [{ start, end: start + (operator as string).length, by }];
}

function literal({ value, start, end }: Node): Mutation[] {
  if (typeof value === "boolean") return [{ start, end, by: String(!value) }];
  if (typeof value !== "number") return [];
  return [{ start, end, by: String(Number.isInteger(value) ? value + 1 : Number((value * 1.1).toPrecision(6))) }];
}
