const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file.",
  ENOTDIR: "there is no such file.",
  EISDIR: "it is a folder.",
  EACCES: "permission is denied.",
  EPERM: "permission is denied.",
  EROFS: "the disk is read-only.",
  ENOSPC: "the disk is full.",
  ELOOP: "its links lead in a circle.",
  ENXIO: "nothing reads from it.",
  ENAMETOOLONG: "its name is too long.",
};

/** What the system says of a file, as the end of a sentence. */
export function reasonOf(error: unknown): string {
  const { code = "", message = String(error) } = error as NodeJS.ErrnoException;
  return reasons[code] ?? `${message.replace(/\.$/, "")}.`;
}
