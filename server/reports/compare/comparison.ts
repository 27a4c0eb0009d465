import type { Board } from "../../model/file.ts";
import type { Installation } from "../../model/installation.ts";
import type { Renamed } from "../../readings/entry-text.ts";
import { counted, listed } from "../../text/words.ts";
import { type Recorded, signatureFor } from "../history/signed.ts";
import { byGravity, type Change, judgedChange, ofRecord } from "./change.ts";
import { changesOf, type EntryChange, isRecord } from "./changes.ts";
import { type Found, findingChanges, foundIn } from "./findings.ts";
import { isSpare, type Matched, matchBoards, matchWays, type PlacedWay, type WayMatch } from "./match.ts";
import { isChanged, type PlaceChanges, placeOf, rankOf } from "./place.ts";
import { lastBefore, movedLimits, type Part } from "./readings.ts";
import { nameNow, partAtOrigin, partOfBoard, partOfWay, type Side, sideOf } from "./sides.ts";

interface Version {
  /** What the reader calls it: the path or the revision it was read from. */
  readonly called: string;
  readonly installation: Installation;
}

export interface Comparison {
  readonly title: string;
  readonly before: string;
  readonly after: string;
  /** How many readings and lines of the earlier version were compared. */
  readonly compared: { readonly readings: number; readonly lines: number };
  readonly places: readonly PlaceChanges[];
  readonly found: { readonly before: Found["counts"]; readonly after: Found["counts"] };
  /** Whether it is of a file without its installation, so that nothing is judged. */
  readonly isPart: boolean;
  /** Lines that could not be read, so that nothing is known of them. */
  readonly unread: { readonly before: readonly string[]; readonly after: readonly string[] };
}

/** Whether the two say the same, as far as they could be read. */
export const isSame = ({ places }: Comparison): boolean => places.length === 0;

/** `partOf`: the file that holds them, where they are parts of an installation that is not known. */
export function comparisonOf(
  before: Version,
  after: Version,
  { partOf }: { readonly partOf?: string } = {},
): Comparison {
  const isPart = partOf !== undefined;
  const [was, is] = [before.installation, after.installation];
  const boards = matchBoards(boardsOf(was), boardsOf(is));
  const renamed: Renamed = new Map(
    boards.flatMap(({ old, now }) =>
      old && now && old.head.name !== now.head.name ? [[old.head.name, now.head.name] as const] : [],
    ),
  );
  const ways = matchWays(boards, renamed);
  const found = isPart ? { before: notJudged, after: notJudged } : { before: foundIn(was), after: foundIn(is) };
  const compare = new Comparer(sideOf(was, found.before, renamed), sideOf(is, found.after, undefined), isPart);
  const places = [compare.origin(), ...boards.map((pair) => compare.board(pair, ways)), ...compare.ways(ways)];
  const changed = places.filter(isChanged).map((place, index) => ({ place, index }));
  changed.sort((a, b) => rankOf(a.place) - rankOf(b.place) || a.index - b.index);
  return {
    title: partOf ?? (is.head.title || was.head.title),
    isPart,
    before: before.called,
    after: after.called,
    compared: compare.compared,
    places: changed.map(({ place }) => place),
    found: { before: found.before.counts, after: found.after.counts },
    unread: { before: unreadIn(was), after: unreadIn(is) },
  };
}

const boardsOf = ({ boards }: Installation): Board[] => boards.map(({ board }) => board);

/** The lines that a fault of the language keeps from being compared. */
function unreadIn({ files }: Installation): string[] {
  return files.flatMap(({ problems }) =>
    [...problems].flatMap(([segment, found]) => {
      const faults = found.filter(({ check }) => check !== "former-word" && check !== "passed-over");
      return [...new Set(faults.map(({ start }) => lineAt(segment, start)))];
    }),
  );
}

function lineAt({ text }: { readonly text: string }, at: number): string {
  const start = Math.max(text.lastIndexOf("\n", at - 1), text.lastIndexOf("\r", at - 1)) + 1;
  return (
    text
      .slice(start)
      .split(/[\r\n]/, 1)[0]
      ?.trim() ?? ""
  );
}

const notJudged: Found = { counts: { error: 0, warning: 0, suppressed: 0 }, at: new Map() };

class Comparer {
  readonly #before: Side;
  readonly #after: Side;
  readonly #isPart: boolean;
  readonly compared = { readings: 0, lines: 0 };
  /** Whether anything changed beside the ways, or in a way that feeds a board: then limits of other ways may have moved. */
  #moves = false;

  constructor(before: Side, after: Side, isPart: boolean) {
    this.#before = before;
    this.#after = after;
    this.#isPart = isPart;
  }

  /** The files, the installation itself and its supply. */
  origin(): PlaceChanges {
    const { changes, findings } = this.#compare(partAtOrigin(this.#before), partAtOrigin(this.#after));
    const { title } = this.#after.installation.head;
    const was = this.#before.installation.head.title;
    return placeOf({
      ...{ of: "installation", where: "installation", title, state: "stays", lost: 0, findings },
      ...(was === title ? {} : { was }),
      changes: changes.map((change) => withItsWays(change, this.#after.installation)),
    });
  }

  board({ old, now }: Matched<Board>, ways: readonly WayMatch[]): PlaceChanges {
    const before = partOfBoard(old, this.#before);
    const after = partOfBoard(now, this.#after);
    const { name: where, title } = (now ?? old).head;
    const own = { of: "board", where, title } as const;
    if (old && now) {
      const changes = this.#compare(before, after);
      const named = old.head.name === where ? changes : renamedFrom(old.head.name, changes);
      return placeOf({ ...own, state: "stays", lost: 0, ...named });
    }
    const stayed = ways.filter(
      (pair) => pair.old && pair.now && (old ? pair.old.board === old : pair.now.board === now),
    );
    const ofIts = (old ?? now).ways.length;
    const content = `${counted(ofIts, "way")}${stayed.length > 0 ? `, ${stayed.length} of them ${old ? "now on another board" : "from another board"}` : ""}`;
    const lost = old ? before.entries.filter(isRecord).length : 0;
    const findings = now ? findingChanges(before, after) : [];
    return placeOf({ ...own, state: old ? "went" : "came", content, lost, changes: [], findings });
  }

  ways(pairs: readonly WayMatch[]): PlaceChanges[] {
    const feeds = ({ now, old }: WayMatch): boolean => (now ?? old).way.kind === "feeder";
    const ordered = [...pairs.filter(feeds), ...pairs.filter((pair) => !feeds(pair))];
    // What feeds a board decides limits on it: so it is looked at first.
    const found = new Map(ordered.map((pair) => [pair, this.#way(pair)]));
    const placed = (pair: WayMatch): PlacedWay => pair.now ?? pair.old;
    const keyOf = (pair: WayMatch, came: boolean): string =>
      [came ? "came" : "went", this.#nameOfBoard(pair), placed(pair).way.id].join("\n");
    const alone = new Map<string, WayMatch>();
    for (const pair of pairs.filter(isAlone)) {
      const key = keyOf(pair, pair.now !== undefined);
      if (!alone.has(key)) alone.set(key, pair);
    }
    return pairs.flatMap((pair): PlaceChanges[] => {
      const place = found.get(pair);
      if (!place) return [];
      const other = isAlone(pair) ? alone.get(keyOf(pair, pair.now === undefined)) : undefined;
      if (!other || isSpare(placed(pair)) === isSpare(placed(other))) return [place];
      // That the spare way is no more goes without saying.
      return isSpare(placed(pair)) ? [] : [{ ...place, spare: true }];
    });
  }

  /** By its present name. */
  #nameOfBoard({ old, now }: WayMatch): string {
    if (now) return now.board.head.name;
    return nameNow(old.board.head.name, this.#before);
  }

  #way({ old, now, sameBoard }: WayMatch): PlaceChanges {
    const { board, way } = now ?? old;
    const where = `${board.head.name}/${way.id}`;
    const own = { of: "way", where, title: way.title } as const;
    const before = partOfWay(old, this.#before);
    const after = partOfWay(now, this.#after);
    if (old && now) {
      const name = nameNow(old.board.head.name, this.#before);
      const former = `${old.board.head.name}/${old.way.id}`;
      const moved = !sameBoard || old.way.id !== way.id || name !== board.head.name;
      const changes = this.#compare(before, after);
      if (way.kind === "feeder" && changes.changes.length > 0) this.#moves = true;
      return placeOf({ ...own, state: "stays", lost: 0, ...(moved ? renamedFrom(former, changes) : changes) });
    }
    const lost = old ? before.entries.filter(isRecord).length : 0;
    const findings = now ? findingChanges(before, after) : [];
    return placeOf({
      ...own,
      state: old ? "went" : "came",
      content: contentOf(way, before, after),
      lost,
      changes: [],
      findings,
    });
  }

  #signed({ kind, old }: EntryChange): Pick<Change, "signed"> {
    const signed = old && ofRecord.has(kind) ? signatureFor(old, recordedIn(this.#before.installation)) : undefined;
    return signed ? { signed } : {};
  }

  #compare(before: Part, after: Part): Pick<PlaceChanges, "changes" | "findings"> {
    const readings = before.entries.filter(isRecord).length;
    this.compared.readings += readings;
    this.compared.lines += before.entries.length - readings;
    const raw = changesOf(before.entries, after.entries);
    const isWay = after.entries[0]?.address.place.of === "way";
    if (!isWay && raw.length > 0) this.#moves = true;
    const ofLimits = !this.#isPart && (raw.length > 0 || this.#moves);
    const limits = ofLimits ? { before: before.limits(), after: after.limits() } : undefined;
    const changes = raw.map((change) => ({
      ...judgedChange(change, limits?.before, limits?.after),
      ...this.#signed(change),
      ...(change.kind === "read" && change.now ? lastBefore(change.now, before.entries) : {}),
    }));
    const moved = limits ? movedLimits(before, after, limits.before, limits.after) : [];
    return { changes: byGravity([...changes, ...moved]), findings: findingChanges(before, after) };
  }
}

/** An installation with all its files, as far as signatures go. */
function recordedIn({ head, files }: Installation): Recorded {
  const installations = files.flatMap((file) => file.installations).filter((part) => part.head === head);
  return { installations, boards: files.flatMap(({ boards }) => boards) };
}

/** The former name says what a line `formerly` says. */
const renamedFrom = (was: string, { changes, findings }: Pick<PlaceChanges, "changes" | "findings">) => ({
  was,
  changes: changes.filter(({ kind, name }) => kind !== "came" || !name.startsWith("formerly ")),
  findings,
});

/** Which ways a line of a circuit type concerns. */
function withItsWays(change: Change, { boards }: Installation): Change {
  const [, type] = /^circuit-type ([^\s,]+)/.exec(change.name) ?? [];
  const ways = boards.flatMap(({ board }) =>
    board.ways.flatMap((way) => (way.header.args.as?.value === type ? [`${board.head.name}/${way.id}`] : [])),
  );
  return type === undefined || ways.length === 0 ? change : { ...change, name: `${change.name} (${listed(ways)})` };
}

function contentOf({ kind }: PlacedWay["way"], before: Part, after: Part): string {
  const { entries } = before.entries.length > 0 ? before : after;
  const stated = (word: string) =>
    entries.find(({ address }) => address.line?.word === word && address.blocks.length === 0)?.shown;
  const readings = entries.filter(isRecord).length;
  return [kind, stated("device"), stated("cable"), readings > 0 ? counted(readings, "reading") : undefined]
    .filter((one) => one !== undefined)
    .join(", ");
}

/** Whether it came or went. */
const isAlone = ({ old, now }: WayMatch): boolean => (old === undefined) !== (now === undefined);
