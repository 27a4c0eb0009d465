/** A git repository in a folder of its own, for tests: a real git, and none of the settings of whoever runs them. */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export class TestRepository {
  readonly folder: string;

  constructor(files: Readonly<Record<string, string>> = {}) {
    this.folder = mkdtempSync(path.join(tmpdir(), "wayfile-git-"));
    this.git("init", "-q", "-b", "main");
    this.git("config", "user.name", "A Tester");
    this.git("config", "user.email", "tester@example.invalid");
    this.write(files);
  }

  /** Runs git here and gives what it writes. */
  git(...args: readonly string[]): string {
    const env = { ...process.env, GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_SYSTEM: "/dev/null", ...this.dated };
    return execFileSync("git", args, { cwd: this.folder, env, encoding: "utf8", stdio: ["pipe", "pipe", "pipe"] });
  }

  /** The day of what is committed next. */
  day = "2026-03-05";

  get dated(): Record<string, string> {
    const at = `${this.day}T10:00:00+00:00`;
    return { GIT_AUTHOR_DATE: at, GIT_COMMITTER_DATE: at };
  }

  write(files: Readonly<Record<string, string | Uint8Array>>): void {
    for (const [name, text] of Object.entries(files)) {
      const file = path.join(this.folder, name);
      mkdirSync(path.dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
  }

  move(from: string, to: string): void {
    mkdirSync(path.dirname(path.join(this.folder, to)), { recursive: true });
    renameSync(path.join(this.folder, from), path.join(this.folder, to));
  }

  remove(name: string): void {
    rmSync(path.join(this.folder, name), { recursive: true });
  }

  /** Commits everything as it is, by somebody, on a day; returns the commit's name. */
  commit(subject: string, files: Readonly<Record<string, string>> = {}, who = "A Tester"): string {
    this.write(files);
    this.git("add", "-A");
    this.git(
      "commit",
      "-q",
      "--allow-empty",
      "-m",
      subject,
      `--author=${who} <${who.replace(/\W/g, "")}@example.invalid>`,
    );
    return this.git("rev-parse", "HEAD").trim();
  }

  end(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
