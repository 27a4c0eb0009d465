/**
 * What is found is divided among boards, ways and installations: twice as many of both are twice the work. It is counted
 * how often a part is looked at, and no clock is asked.
 */
import { expect, test } from "vitest";
import { networkOf } from "../../server/boards/network.ts";
import type { BoardInPlace, Installation } from "../../server/model/installation.ts";
import { sharesOf } from "../../server/reports/common/shares.ts";
import { scopesOf } from "../../server/reports/summary/scope.ts";
import { grading, gradingOnBoard } from "../../server/rules/frame/graded-fixes.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import { atItsWay, typedAmong } from "../../server/rules/frame/shared-line.ts";
import { gridView } from "../../server/views/grid.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

const each = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join("\n");
const boards = (count: number, ways = ""): string =>
  each(count, (index) => `board B${index} "Board" {\nfed-from supply\n${ways}\n}`);
const installations = (text: string): readonly Installation[] =>
  checkProject(fileOfText("a.ways", `wayfile 1\n${text}\n`), {
    file: () => ({ failure: "there is no such file." }),
    resolve: (_, use) => use,
  }).installations;
const only = (lines: string): Installation => installations(`installation "One" {\n${lines}\n}`)[0] as Installation;

type Segment = Finding["spot"]["segment"];
const fix = { title: "Put right", edits: [], safe: true };

/** The same things, where each look at one of their parts is counted. */
class Counted {
  looks = 0;

  of<T extends object>(one: T, part: keyof T): T {
    return new Proxy(one, {
      get: (target, name) => {
        if (name === part) this.looks++;
        return Reflect.get(target, name, target);
      },
    });
  }

  finding(segment: Segment): Finding {
    const spot = { segment, start: 0, end: 1 };
    const plain = { check: "loop/zs-over-limit", severity: "error", message: "", spot, related: [], fixes: [fix] };
    return this.of(plain as unknown as Finding, "spot");
  }
}

type Doing = (count: number, counted: Counted) => void;

const doings: readonly (readonly [name: string, doing: Doing])[] = [
  [
    "the summary divides what is found among boards",
    (count, counted) => {
      const one = only(boards(count));
      const findings = one.boards.map(({ board }) => counted.finding(board.head.header.segment));
      const scopes = scopesOf(one, { findings, suppressed: [] });
      expect(scopes.map(({ result }) => result.findings.length)).toEqual([0, ...findings.map(() => 1)]);
    },
  ],
  [
    "what is found is divided among the installations of a file",
    (count, counted) => {
      const all = installations(each(count, (index) => `installation "I${index}" {\n${boards(1)}\n}`));
      const findings = all.map(({ head }) => counted.finding(head.header.segment));
      const shares = sharesOf(all, { findings, suppressed: [] });
      expect(shares.map(({ result }) => result.findings.length)).toEqual(findings.map(() => 1));
    },
  ],
  [
    "the grid of tests divides what is found among ways",
    (count, counted) => {
      const one = only(
        boards(
          1,
          each(count, () => 'way 1 radial "Way" {\n}'),
        ),
      );
      const [place] = one.boards as readonly [BoardInPlace];
      const findings = place.board.ways.map(({ segment }) => counted.finding(segment));
      const { rows } = gridView(place, networkOf(one), findings);
      expect(rows.map((row) => row.findings.length)).toEqual(findings.map(() => 1));
    },
  ],
  [
    "the fixes of an installation are graded by the boards they are on",
    (count, counted) => {
      const one = only(boards(count));
      const graded = grading({ ...one, boards: one.boards.map((place) => counted.of(place, "board")) });
      const found = one.boards.map(({ board }) => new Counted().finding(board.head.header.segment));
      expect(found.map((finding) => graded(finding).fixes.length)).toEqual(found.map(() => 1));
    },
  ],
  [
    "the fixes of a board are graded by the ways they are on",
    (count, counted) => {
      const one = only(
        boards(
          1,
          each(count, (index) => `way ${index} radial "Way" {\n}`),
        ),
      );
      const [{ board, context }] = one.boards as readonly [BoardInPlace];
      const ways = board.ways.map((way) => counted.of(way, "segment"));
      const graded = gradingOnBoard({ board: { ...board, head: board.head, ways }, context });
      const found = board.ways.map(({ segment }) => new Counted().finding(segment));
      expect(found.map((finding) => graded(finding).fixes.length)).toEqual(found.map(() => 1));
    },
  ],
  [
    "a finding goes to its way among those of a circuit type",
    (count, counted) => {
      const type = "circuit-type T {\ndevice BS EN 60898 B32 6 kA\n}\n";
      const one = only(
        type +
          boards(
            1,
            each(count, (index) => `way ${index} radial "Way" as T {\n}`),
          ),
      );
      const [{ board }] = one.boards as readonly [BoardInPlace];
      const typed = typedAmong(board.ways.map((way) => counted.of(way, "segment")));
      const found = board.ways.map(({ segment, type: of }): Finding => {
        const related = [{ spot: { segment, start: 0, end: 1 }, message: "" }];
        return { ...new Counted().finding(of?.segment as Segment), related };
      });
      const placed = found.map((finding) => atItsWay(finding, typed).spot.segment);
      expect(placed).toEqual(board.ways.map(({ segment }) => segment));
    },
  ],
];

test.each(doings)("%s once", (_, doing) => {
  const looks = (count: number): number => {
    const counted = new Counted();
    doing(count, counted);
    return counted.looks;
  };
  const [few, many] = [looks(24), looks(96)];
  expect(few).toBeGreaterThanOrEqual(24);
  expect(many).toBeLessThanOrEqual(few * 4.5);
});
