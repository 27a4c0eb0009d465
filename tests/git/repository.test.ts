/** What is read of a repository, by a real git. */
import { existsSync } from "node:fs";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { Repository } from "../../server/git/repository.ts";
import { git, isRevision } from "../../server/git/run.ts";
import { TestRepository } from "../helpers/repository.ts";

const made: TestRepository[] = [];
const repositoryOf = (files: Readonly<Record<string, string>> = {}): TestRepository => {
  const one = new TestRepository(files);
  made.push(one);
  return one;
};
afterEach(() => {
  for (const one of made.splice(0)) one.end();
});

const opened = async (folder: string): Promise<Repository> => {
  const found = await Repository.round(folder);
  if ("failure" in found) throw new Error(found.failure);
  return found;
};
const text = (contents: unknown, name: string) => (contents as Map<string, Buffer>).get(name)?.toString("utf8");

/** Names that a shell, an option parser or a pattern would take for something else. */
const hostile = [
  "-rf.ways",
  "$(touch owned).ways",
  "a b;touch owned;.ways",
  "*.ways",
  ":(top)x.ways",
  "'\"`.ways",
  "Ω é.ways",
  "tab\there.ways",
];

describe("a repository", () => {
  it("gives the files of a revision, of the index and of none", async () => {
    const test = repositoryOf();
    const first = test.commit("One", { "a.ways": "one", "sub/b.ways": "two", "c.txt": "no" });
    test.commit("Two", { "a.ways": "changed" });
    test.write({ "a.ways": "staged", "new.ways": "new" });
    test.git("add", "-A");
    test.write({ "a.ways": "on disk" });
    const repository = await opened(path.join(test.folder, "sub"));
    const commit = await repository.commit("HEAD~1");
    expect(commit).toEqual({ commit: first });
    expect(await repository.files({ commit: first }, ".ways")).toEqual(["a.ways", "sub/b.ways"]);
    expect(await repository.files({ commit: first }, ".ways", "sub")).toEqual(["sub/b.ways"]);
    expect(await repository.files({ index: true }, ".ways")).toEqual(["a.ways", "new.ways", "sub/b.ways"]);
    const old = await repository.contents({ commit: first }, ["a.ways", "missing.ways", "sub", "sub/b.ways"]);
    expect([text(old, "a.ways"), text(old, "sub/b.ways"), (old as Map<string, Buffer>).size]).toEqual([
      "one",
      "two",
      2,
    ]);
    expect(text(await repository.contents({ index: true }, ["a.ways"]), "a.ways")).toBe("staged");
    expect(await repository.changed(first, { index: true })).toEqual(["a.ways", "new.ways"]);
  });

  it("follows a file through its renames, with who changed it and when", async () => {
    const test = repositoryOf();
    const long = Array.from({ length: 20 }, (_, index) => `line ${index}\n`).join("");
    test.day = "2021-04-02";
    test.commit("First", { "old name.ways": long }, "R. Moss");
    test.commit("Elsewhere", { "other.ways": "x" });
    test.move("old name.ways", "sub/new.ways");
    test.day = "2026-03-05";
    test.commit("Moved");
    test.commit("Changed", { "sub/new.ways": `${long}more\n` }, "T. O'B");
    const repository = await opened(test.folder);
    const commits = await repository.commitsOf("sub/new.ways", "HEAD");
    if ("failure" in commits) throw new Error(commits.failure);
    expect(commits.map(({ author, when, subject, path: name }) => [author, when.slice(0, 10), subject, name])).toEqual([
      ["T. O'B", "2026-03-05", "Changed", "sub/new.ways"],
      ["A Tester", "2026-03-05", "Moved", "sub/new.ways"],
      ["R. Moss", "2021-04-02", "First", "old name.ways"],
    ]);
    expect(await repository.isShallow()).toBe(false);
  });

  it("takes a change on another branch as that of whoever made it, and a merge as one where its file is neither's", async () => {
    const test = repositoryOf();
    test.commit("Base", { "a.ways": "1\n2\n3\n4\n5\n" });
    test.git("checkout", "-q", "-b", "side");
    test.commit("Side", { "a.ways": "1\n2\n3\n4\nfive\n" }, "S. Ide");
    test.git("checkout", "-q", "main");
    test.commit("Main", { "a.ways": "one\n2\n3\n4\n5\n" });
    test.git("merge", "-q", "--no-edit", "side");
    const commits = await (await opened(test.folder)).commitsOf("a.ways", "HEAD");
    if ("failure" in commits) throw new Error(commits.failure);
    expect(commits.map(({ subject, author }) => `${subject} by ${author}`)).toEqual([
      "Merge branch 'side' by A Tester",
      "Main by A Tester",
      "Side by S. Ide",
      "Base by A Tester",
    ]);
    test.git("reset", "-q", "--hard", "main~1");
    test.git("merge", "-q", "--no-edit", "--no-commit", "side");
    test.commit("Merged by hand", { "a.ways": "one\n2\nthree\n4\nfive\n" });
    const again = await (await opened(test.folder)).commitsOf("a.ways", "HEAD");
    if ("failure" in again) throw new Error(again.failure);
    expect(again.map(({ subject, parents }) => [subject, parents.length])).toContainEqual(["Merged by hand", 2]);
  });

  it.each(hostile)("reads a file called %j and starts nothing", async (name) => {
    const test = repositoryOf();
    const id = test.commit("One", { [name]: "text", "plain.ways": "plain" });
    const repository = await opened(test.folder);
    const files = await repository.files({ commit: id }, ".ways", name);
    expect(files).toEqual([name]);
    expect(text(await repository.contents({ commit: id }, [name]), name)).toBe("text");
    const commits = await repository.commitsOf(name, "HEAD");
    expect("failure" in commits ? commits : commits.map(({ path: own }) => own)).toEqual([name]);
    expect(existsSync(path.join(test.folder, "owned"))).toBe(false);
  });

  it("runs nothing that its configuration or attributes name", async () => {
    const test = repositoryOf();
    test.write({ ".gitattributes": "*.ways diff=evil filter=evil\n" });
    const id = test.commit("One", { "a.ways": "one" });
    test.commit("Two", { "a.ways": "two" });
    for (const key of [
      "core.fsmonitor",
      "diff.external",
      "diff.evil.command",
      "diff.evil.textconv",
      "core.pager",
      "gpg.program",
    ])
      test.git("config", key, "touch owned");
    test.git("config", "log.showSignature", "true");
    const repository = await opened(test.folder);
    await repository.files({ index: true }, ".ways");
    await repository.changed(id, { index: true });
    expect(await repository.commitsOf("a.ways", "HEAD")).toHaveLength(2);
    expect(text(await repository.contents({ commit: id }, ["a.ways"]), "a.ways")).toBe("one");
    expect(existsSync(path.join(test.folder, "owned"))).toBe(false);
  });

  it("fetches nothing that a partial copy lacks, and says what brings it", async () => {
    const test = repositoryOf();
    test.commit("One", { "a.ways": "one" });
    test.commit("Two", { "a.ways": "two" });
    const lost = test.git("rev-parse", "HEAD~1:a.ways").trim();
    for (const [key, value] of [
      ["core.repositoryFormatVersion", "1"],
      ["extensions.partialClone", "away"],
      ["remote.away.promisor", "true"],
      ["remote.away.url", test.folder],
      ["remote.away.uploadpack", "touch owned; false"],
      ["protocol.allow", "always"],
    ] as const)
      test.git("config", key, value);
    test.remove(`.git/objects/${lost.slice(0, 2)}/${lost.slice(2)}`);
    const repository = await opened(test.folder);
    const id = await repository.commit("HEAD~1");
    if ("failure" in id) throw new Error(id.failure);
    const failure = expect.stringContaining("git fetch --refetch --no-filter");
    expect(await repository.contents(id, ["a.ways"])).toEqual({ failure });
    expect(await repository.commitsOf("a.ways", "HEAD")).toHaveLength(2);
    expect(existsSync(path.join(test.folder, "owned"))).toBe(false);
  });

  it("tells commits apart whatever their authors and subjects hold", async () => {
    const test = repositoryOf();
    const first = test.commit("One", { "old.ways": "one\ntwo\nthree\n" });
    test.move("old.ways", "a.ways");
    const named = `Moved \x01${first}`;
    test.commit(named, {}, `S. Ide \x01${first}`);
    const commits = await (await opened(test.folder)).commitsOf("a.ways", "HEAD");
    if ("failure" in commits) throw new Error(commits.failure);
    expect(commits.map(({ subject, path: own }) => [subject, own])).toEqual([
      [named, "a.ways"],
      ["One", "old.ways"],
    ]);
  });

  it("answers in a sentence where there is none, no such revision, or an option in its place", async () => {
    const test = repositoryOf();
    test.commit("One", { "a.ways": "one" });
    const repository = await opened(test.folder);
    for (const revision of ["nowhere", "--all", "-h", "", "a\nb", "HEAD:a.ways"])
      expect(await repository.commit(revision), revision).toHaveProperty("failure");
    expect(await Repository.round(path.parse(test.folder).root)).toHaveProperty("failure");
    expect([isRevision("main"), isRevision("-x"), isRevision("")]).toEqual([true, false, false]);
    const failed = await git(test.folder, ["no-such-command"]);
    expect(failed).toHaveProperty("failure");
  });

  it("answers in a sentence where a name cannot be given to a program", async () => {
    const test = repositoryOf();
    test.commit("One", { "a.ways": "one" });
    const repository = await opened(test.folder);
    const failure = "git cannot be asked about a file of this name.";
    for (const name of ["a\0b.ways", "x".repeat(4_000_000)])
      expect(await repository.commitsOf(name, "HEAD")).toEqual({ failure });
    expect(await git(`${test.folder}\0`, ["status"])).toEqual({ failure });
  });

  it("stops git where it takes too long", async () => {
    const test = repositoryOf();
    const waiting = await git(test.folder, ["-c", "alias.wait=!sleep 5", "wait"], { within: 50 });
    expect(waiting).toEqual({ failure: "git took too long and was stopped." });
  });
});
