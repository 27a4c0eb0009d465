/** Requests on what a schedule was: its revisions, one of them, and what each line was in it. */
export interface RevisionsAnswer {
  readonly revisions: readonly {
    readonly id: string;
    readonly author: string;
    /** ISO 8601. */
    readonly when: string;
    readonly subject: string;
  }[];
}

/** The commits that changed the file at `uri`, the latest first. */
export const revisionsRequest = "wayfile/revisions";

export interface PastQuestion {
  readonly uri: string;
  /** As git names it: `HEAD~3`, `main`, a commit. */
  readonly revision: string;
}

/** The text of the file in the revision. */
export interface PastAnswer {
  readonly text: string;
}

export const pastRequest = "wayfile/past";

export interface BesideAnswer {
  readonly title: string;
  readonly markdown: string;
  /** Lines of the present text that are not what they were, from zero. */
  readonly lines: readonly {
    readonly line: number;
    readonly text: string;
    readonly detail: readonly string[];
    readonly isGrave: boolean;
  }[];
}

/** What each line was in the revision, with limits and margins. */
export const besideRequest = "wayfile/beside";

export interface TimelineQuestion {
  readonly uri: string;
  readonly position: { readonly line: number; readonly character: number };
}

export interface TimelineAnswer {
  readonly title: string;
  readonly markdown: string;
}

/** The reading at a position over days and commits. */
export const timelineRequest = "wayfile/timeline";
