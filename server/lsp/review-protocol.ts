/** Questions and answers of a schedule, and what carries them on. The extension imports only these types. */
interface Position {
  readonly line: number;
  readonly character: number;
}

export interface ConversationAnswer {
  readonly text: string;
  readonly line: number;
  readonly answers: readonly { readonly text: string; readonly line: number }[];
}

/** All conversations of a document. */
export const conversationsRequest = "wayfile/conversations";

export interface SayQuestion {
  readonly uri: string;
  /** A line of the conversation that is answered; of a new question, the line it is about. */
  readonly line: number;
  readonly text: string;
  readonly answers: boolean;
}

export interface SayAnswer {
  readonly version?: number;
  readonly edit?: { readonly range: { readonly start: Position; readonly end: Position }; readonly newText: string };
  readonly problem?: string;
}

/** The edit that writes a question or an answer. */
export const sayRequest = "wayfile/say";
