/** One entry a feature: where it is registered, its capability is stated. */
import {
  type ClientCapabilities,
  type DocumentDiagnosticParams,
  type DocumentDiagnosticReport,
  type FoldingRange,
  FoldingRangeKind,
  type Hover,
  type Location,
  type ReferenceParams,
  type SelectionRange,
  type SelectionRangeParams,
  type ServerCapabilities,
} from "vscode-languageserver";
import { folds } from "../features/folding.ts";
import { links } from "../features/links.ts";
import { definitions, nameAt, occurrences, spotOf } from "../features/names.ts";
import { selections } from "../features/selection.ts";
import { symbols } from "../features/symbols.ts";
import { withoutMarks } from "../text/markdown.ts";
import { resolveUri } from "../workspace/uri.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { askAgain } from "./answer.ts";
import { callHierarchy } from "./call-hierarchy.ts";
import type { Checking } from "./checking.ts";
import { codeActions } from "./code-actions.ts";
import { colours } from "./colours.ts";
import { completions } from "./completions.ts";
import { documentSymbol, locationOf, rangeOf } from "./convert.ts";
import type { Delivery } from "./delivery.ts";
import { fileOperations } from "./file-operations.ts";
import { formatting } from "./formatting.ts";
import { inlay } from "./inlay.ts";
import { lenses } from "./lenses.ts";
import { papers } from "./papers.ts";
import { Part } from "./part.ts";
import { past } from "./past.ts";
import {
  type ChoicesAnswer,
  choicesRequest,
  type NewScheduleAnswer,
  type NewScheduleQuestion,
  newScheduleRequest,
} from "./protocol.ts";
import { register } from "./register.ts";
import { renaming } from "./renaming.ts";
import { reports } from "./reports.ts";
import { reviews } from "./reviews.ts";
import type { Runtime } from "./runtime.ts";
import { badRequest, findings, type Service } from "./service.ts";
import { everySchedule, readUsers } from "./shared-names.ts";
import { signatures } from "./signatures.ts";
import { entries, views } from "./views.ts";
import { worksheets } from "./worksheets.ts";
import { isReported, workspaceFindings } from "./workspace-findings.ts";
import { workspaceSymbols } from "./workspace-symbols.ts";

type Capabilities = ServerCapabilities;

/** What an editor says of itself beyond the protocol, in its initialization options. */
export interface ClientWishes {
  /** It shows images in a hover. */
  readonly pictures?: boolean;
  /** Its command that types a text where the cursor is. */
  readonly goOn?: string;
  /** Its command that opens what a lens is of. */
  readonly lens?: string;
}

export function registerFeatures(
  service: Service,
  delivery: Delivery,
  checking: Checking,
  client: ClientCapabilities,
  { pictures = false, goOn, lens }: ClientWishes,
  runtime: Pick<Runtime, "office" | "past" | "settings" | "today">,
): Capabilities {
  ownRequests(service);
  worksheets(service);
  reports(service);
  register(service, checking, runtime);
  papers(service, runtime.office, runtime.settings);
  past(service, runtime.past);
  views(service);
  entries(service);
  reviews(service);
  return {
    ...diagnostics(service, delivery, checking),
    ...hovers(service, client, pictures),
    ...completions(service, client, goOn),
    ...outline(service),
    ...folding(service, client),
    ...colours(service, client),
    ...places(service),
    ...documentLinks(service),
    ...codeActions(service, client),
    ...renaming(service, client),
    ...selectionRanges(service),
    ...formatting(service),
    ...inlay(service, delivery, client),
    ...lenses(service, delivery, client, lens),
    ...signatures(service, client),
    ...workspaceSymbols(service),
    ...callHierarchy(service),
    ...fileOperations(service),
  };
}

function diagnostics({ connection, ask, workspace }: Service, delivery: Delivery, checking: Checking): Capabilities {
  if (!delivery.pulls) return {};
  connection.languages.diagnostics.on(
    ask(
      "textDocument/diagnostic",
      noFindings,
      (snapshot, { previousResultId, textDocument: { uri } }: DocumentDiagnosticParams) => {
        const { path } = snapshot.file;
        if (isReported(path, workspace, delivery)) return delivery.pull(snapshot, previousResultId);
        delivery.gone(path, uri);
        return noFindings;
      },
      {
        findings: (path) => delivery.wants(path),
        failed: (path, error) => delivery.pullFailed(path, error),
        overtaken: askAgain,
      },
    ),
  );
  workspaceFindings({ connection, workspace }, delivery, checking);
  return { diagnosticProvider: { identifier: "wayfile", interFileDependencies: true, workspaceDiagnostics: true } };
}

const noFindings: DocumentDiagnosticReport = { kind: "full", items: [] };

const explained = () =>
  new Part(async () => ({
    ...(await import("../features/hover.ts")),
    ...(await import("../rules/frame/reasons.ts")),
  }));

/** `pictures`: the editor shows images in a card, where another would show pages of letters. */
function hovers({ connection, ask, cursor }: Service, client: ClientCapabilities, pictures: boolean): Capabilities {
  const formats = client.textDocument?.hover?.contentFormat;
  const part = explained();
  const kind = formats === undefined || formats.includes("markdown") ? "markdown" : "plaintext";
  connection.onHover(
    ask(
      "textDocument/hover",
      null,
      (snapshot, { position }): Hover | null => {
        const found = part.now.hover(snapshot, cursor(snapshot, position), {
          pictures: pictures && kind === "markdown",
          reasonOf: part.now.reasonOf,
        });
        if (!found) return null;
        const value = kind === "markdown" ? found.markdown : withoutMarks(found.markdown);
        return { contents: { kind, value }, range: rangeOf(snapshot.positions, found.spot) };
      },
      { ...findings, part },
    ),
  );
  return { hoverProvider: true };
}

function outline({ connection, ask }: Service): Capabilities {
  connection.onDocumentSymbol(
    ask("textDocument/documentSymbol", [], (snapshot) =>
      symbols(snapshot).map((symbol) => documentSymbol(snapshot.positions, symbol)),
    ),
  );
  return { documentSymbolProvider: true };
}

function folding({ connection, ask }: Service, client: ClientCapabilities): Capabilities {
  const limit = client.textDocument?.foldingRange?.rangeLimit ?? Number.POSITIVE_INFINITY;
  connection.onFoldingRanges(
    ask("textDocument/foldingRange", [], (snapshot): FoldingRange[] =>
      folds(snapshot)
        .slice(0, limit)
        .map(({ first, last, isComment }) => ({
          startLine: first,
          endLine: last,
          ...(isComment ? { kind: FoldingRangeKind.Comment } : {}),
        })),
    ),
  );
  return { foldingRangeProvider: true };
}

/** Where a name is defined and used. */
function places(service: Service): Capabilities {
  const { connection, ask, cursor, workspace } = service;
  const locations = (snapshot: Snapshot, spots: readonly Parameters<typeof locationOf>[2][]): Location[] =>
    spots.flatMap((spot) => locationOf(workspace, snapshot, spot) ?? []);
  connection.onDefinition(
    ask("textDocument/definition", null, (snapshot, { position }) => {
      const at = cursor(snapshot, position);
      const named = nameAt(snapshot, at);
      if (named) return locations(snapshot, definitions(snapshot, named).map(spotOf));
      const start = { line: 0, character: 0 };
      return links(snapshot, resolveUri)
        .filter(({ spot }) => spot.segment === at.segment && at.offset >= spot.start && at.offset <= spot.end)
        .map(({ path }) => ({ uri: workspace.uri(path), range: { start, end: start } }));
    }),
  );
  const references = ask("textDocument/references", [], (snapshot, { position, context }: ReferenceParams) => {
    const named = nameAt(snapshot, cursor(snapshot, position));
    if (!named) return [];
    const all = everySchedule(workspace, snapshot, named).flatMap((one) => {
      const wanted = occurrences(one, named).filter(({ defines }) => context.includeDeclaration || !defines);
      return locations(one, wanted.map(spotOf));
    });
    return [...new Map(all.map((location) => [JSON.stringify(location), location])).values()];
  });
  connection.onReferences(async (params, token) => {
    await readUsers(service, params);
    return references(params, token);
  });
  connection.onDocumentHighlight(
    ask("textDocument/documentHighlight", [], (snapshot, { position }) => {
      const named = nameAt(snapshot, cursor(snapshot, position));
      const here = named ? occurrences(snapshot, named).filter(({ fact }) => snapshot.positions.has(fact.segment)) : [];
      return here.map((one) => ({ range: rangeOf(snapshot.positions, spotOf(one)) }));
    }),
  );
  return { definitionProvider: true, referencesProvider: true, documentHighlightProvider: true };
}

function documentLinks({ connection, ask, workspace }: Service): Capabilities {
  connection.onDocumentLinks(
    ask("textDocument/documentLink", [], (snapshot) =>
      links(snapshot, resolveUri).map(({ spot, path }) => ({
        range: rangeOf(snapshot.positions, spot),
        target: workspace.uri(path),
      })),
    ),
  );
  return { documentLinkProvider: { resolveProvider: false } };
}

function selectionRanges({ connection, ask, cursor }: Service): Capabilities {
  connection.onSelectionRanges(
    ask("textDocument/selectionRange", [], (snapshot, { positions }: SelectionRangeParams) =>
      positions.map((position): SelectionRange => {
        const at = cursor(snapshot, position);
        const none: SelectionRange = { range: { start: position, end: position } };
        return (
          selections(snapshot, at).reduceRight<SelectionRange | undefined>(
            (parent, span) => ({
              range: rangeOf(snapshot.positions, { segment: at.segment, ...span }),
              ...(parent ? { parent } : {}),
            }),
            undefined,
          ) ?? none
        );
      }),
    ),
  );
  return { selectionRangeProvider: true };
}

function ownRequests({ connection }: Service): void {
  const part = new Part(() => import("../features/new-schedule.ts"));
  connection.onRequest(choicesRequest, async (): Promise<ChoicesAnswer> => {
    await part.load();
    const { earthingChoices, standardChoices, premisesChoices } = part.now;
    return { earthing: earthingChoices, standards: standardChoices, premises: premisesChoices };
  });
  connection.onRequest<NewScheduleAnswer, never>(
    newScheduleRequest,
    async (question: Partial<NewScheduleQuestion> | undefined) => {
      await part.load();
      const { earthingChoices, standardChoices, premisesChoices, mostWays, newSchedule } = part.now;
      const { name, earthing, standard, premises, ways } = question ?? {};
      const known = (choices: typeof earthingChoices, id: unknown): id is string =>
        choices.some((choice) => choice.id === id);
      if (typeof name !== "string" || name.trim() === "") return badRequest("A schedule needs a name.");
      if (!known(earthingChoices, earthing)) return badRequest(`“${earthing}” is not an earthing arrangement.`);
      if (!known(standardChoices, standard)) return badRequest(`“${standard}” is not an edition.`);
      if (premises !== undefined && !known(premisesChoices, premises))
        return badRequest(`“${premises}” is not a kind of premises.`);
      if (ways !== undefined && !(Number.isInteger(ways) && ways > 0 && ways <= mostWays))
        return badRequest(`A board is laid out with 1 to ${mostWays} ways.`);
      const beginning = { ...(premises === undefined ? {} : { premises }), ...(ways === undefined ? {} : { ways }) };
      return { text: newSchedule({ name, earthing, standard, ...beginning }) };
    },
  );
}
