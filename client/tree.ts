/** The schedules of the workspace as a tree: boards, and their ways with their state. What is not unfolded costs nothing. */
import {
  type Disposable,
  EventEmitter,
  languages,
  Position,
  Range,
  ThemeColor,
  ThemeIcon,
  type TreeDataProvider,
  TreeItem,
  TreeItemCollapsibleState,
  Uri,
  window,
  workspace,
} from "vscode";
import type { Placed } from "../server/lsp/placed.ts";
import { type ViewAnswer, type ViewQuestion, viewRequest } from "../server/lsp/view-protocol.ts";
import type { BoardRow, FoundLine } from "../server/views/board.ts";

type Row = Placed<BoardRow>;

type Node =
  | { readonly kind: "file"; readonly uri: Uri }
  | { readonly kind: "board"; readonly uri: Uri; readonly name: string; readonly rows: readonly Row[] }
  | { readonly kind: "way"; readonly uri: Uri; readonly row: Row }
  | { readonly kind: "note"; readonly text: string };

interface Asked {
  request<Result>(method: string, parameters?: unknown): Promise<Result>;
}

const mostFiles = 2_000;
/** Milliseconds after the last finding that arrived. */
const calm = 800;

class Schedules implements TreeDataProvider<Node> {
  readonly #server: Asked;
  readonly #changed = new EventEmitter<Node | undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  #soon: ReturnType<typeof setTimeout> | undefined;

  constructor(server: Asked) {
    this.#server = server;
  }

  refresh(): void {
    clearTimeout(this.#soon);
    this.#soon = setTimeout(() => this.#changed.fire(undefined), calm);
  }

  getTreeItem(node: Node): TreeItem {
    switch (node.kind) {
      case "file":
        return fileItem(node.uri);
      case "board":
        return boardItem(node);
      case "way":
        return wayItem(node);
      case "note":
        return new TreeItem(node.text);
    }
  }

  async getChildren(node?: Node): Promise<Node[]> {
    if (!node) {
      const files = await workspace.findFiles("**/*.ways", "**/node_modules/**", mostFiles);
      return files
        .toSorted((one, other) => one.path.localeCompare(other.path))
        .map((uri): Node => ({ kind: "file", uri }));
    }
    if (node.kind === "file") return await this.#boardsOf(node.uri);
    return node.kind === "board" ? node.rows.map((row): Node => ({ kind: "way", uri: node.uri, row })) : [];
  }

  async #boardsOf(uri: Uri): Promise<Node[]> {
    try {
      const first = await this.#ask(uri);
      if (first.nothing !== undefined) return [{ kind: "note", text: first.nothing }];
      const answers = await Promise.all(
        first.boards.map(({ key }) => (key === first.board ? first : this.#ask(uri, key))),
      );
      return answers.map(({ content, boards, board }): Node => {
        const named = boards.find(({ key }) => key === board);
        const rows = content?.kind === "board" ? content.rows : [];
        return { kind: "board", uri, name: `${named?.name ?? ""} ${named?.title ?? ""}`.trim(), rows };
      });
    } catch (error) {
      return [{ kind: "note", text: error instanceof Error ? error.message : String(error) }];
    }
  }

  #ask(uri: Uri, board?: string): Promise<ViewAnswer> {
    const question: ViewQuestion = { uri: uri.toString(), view: "board", ...(board === undefined ? {} : { board }) };
    return this.#server.request<ViewAnswer>(viewRequest, question);
  }
}

function fileItem(uri: Uri): TreeItem {
  const item = new TreeItem(uri, TreeItemCollapsibleState.Collapsed);
  item.description = workspace.asRelativePath(uri, false).split("/").slice(0, -1).join("/");
  item.iconPath = ThemeIcon.File;
  item.command = { command: "vscode.open", title: "Open", arguments: [uri] };
  return item;
}

function boardItem({ uri, name, rows }: Extract<Node, { readonly kind: "board" }>): TreeItem {
  const open = rows.filter((row) => isToDo(row)).length;
  const item = new TreeItem(name, TreeItemCollapsibleState.Collapsed);
  item.id = `${uri.toString()}#${name}`;
  item.description = open === 0 ? `${rows.length} ways` : `${open} of ${rows.length} with something to do`;
  item.iconPath = new ThemeIcon("list-tree");
  return item;
}

function wayItem({ uri, row }: Extract<Node, { readonly kind: "way" }>): TreeItem {
  const { id, title, spare, mark } = row;
  const item = new TreeItem(`${id}  ${spare ? "spare" : title || row.kind}`);
  item.description = spare ? "" : stateText(row);
  item.tooltip = row.findings.map(({ message }) => message).join("\n");
  item.iconPath = spare ? new ThemeIcon("circle-outline") : icons[worst(row.findings) ?? "none"];
  const place = new Position(mark.line, mark.character);
  item.command = {
    command: "vscode.open",
    title: "Go to the way",
    arguments: [mark.uri === undefined ? uri : Uri.parse(mark.uri, true), { selection: new Range(place, place) }],
  };
  return item;
}

const icons = {
  error: new ThemeIcon("error", new ThemeColor("list.errorForeground")),
  warning: new ThemeIcon("warning", new ThemeColor("list.warningForeground")),
  information: new ThemeIcon("info"),
  none: new ThemeIcon("pass"),
} as const;

export const worst = (found: readonly Placed<FoundLine>[]): FoundLine["severity"] | undefined =>
  (["error", "warning", "information"] as const).find((severity) => found.some((one) => one.severity === severity));

const isToDo = ({ findings, missing }: Row): boolean =>
  missing.length > 0 || findings.some(({ severity }) => severity !== "information");

/** `Zs 54 % left · 2 missing`: what one reads for comes first. */
export function stateText({ least, missing, findings }: Row): string {
  const errors = findings.filter(({ severity }) => severity === "error").length;
  // A margin that is left says nothing beside an error of another kind.
  const margin = least && (errors === 0 || least.standing === "beyond") ? [`${least.name} ${least.left}`] : [];
  const parts = [
    ...(margin.length > 0 || errors === 0 ? margin : [errors === 1 ? "1 error" : `${errors} errors`]),
    ...(missing.length > 0 ? [`${missing.length} missing`] : []),
  ];
  return parts.join(" · ");
}

export function showTree(server: Asked): Disposable[] {
  const schedules = new Schedules(server);
  const watcher = workspace.createFileSystemWatcher("**/*.ways", false, true, false);
  return [
    window.registerTreeDataProvider("wayfile.schedules", schedules),
    watcher,
    watcher.onDidCreate(() => schedules.refresh()),
    watcher.onDidDelete(() => schedules.refresh()),
    languages.onDidChangeDiagnostics(({ uris }) => {
      if (uris.some(({ path }) => path.endsWith(".ways"))) schedules.refresh();
    }),
  ];
}
