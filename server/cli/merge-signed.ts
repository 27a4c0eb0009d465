/** What a merge brings along that somebody had signed for as it was: a clean merge of it is still to be seen. */
import type { FileModel } from "../model/file.ts";
import { changesInFile } from "../reports/compare/records.ts";
import { breaksRecord, signatureFor } from "../reports/history/signed.ts";
import { fileOfText } from "../workspace/loaded-file.ts";

interface Texts {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/** More than these are counted. */
const mostShown = 20;

/** A sentence for each recorded reading that a side altered, moved to another day or lost without a reason. */
export function signedNotes(texts: Texts, labels: Readonly<Record<"ours" | "theirs", string>>): string[] {
  const base = fileOfText("", texts.base).model;
  const notes = (["ours", "theirs"] as const).flatMap((side) =>
    notesOf(base, fileOfText("", texts[side]).model, labels[side]),
  );
  const rest = notes.length - mostShown;
  return [
    ...notes.slice(0, mostShown),
    ...(rest > 0 ? [`and ${rest} more recorded readings that are not what they were`] : []),
  ];
}

function notesOf(base: FileModel, side: FileModel, who: string): string[] {
  return changesInFile(base, side)
    .changes.filter(breaksRecord)
    .flatMap(({ kind, old, now }) => {
      if (!old) return [];
      const signature = signatureFor(old, base, []);
      const signed = signature ? `, for which ${signature.by} signed on ${signature.on}` : "";
      const became =
        kind === "vanished" || !now ? "is gone" : kind === "re-dated" ? "has another day" : `is ${now.shown}`;
      return [
        `${who}: ${old.at} ${became}; it was recorded as ${old.shown || "a test"}${signed}. If it was wrong, correct it with “was” and the reason.`,
      ];
    });
}
