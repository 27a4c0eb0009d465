/** Requests of our own, beside those of the protocol. The extension imports only these types. */
export interface ChoicesAnswer {
  readonly earthing: readonly string[];
  readonly standards: readonly { readonly id: string; readonly label: string; readonly detail: string }[];
}

export interface NewScheduleQuestion {
  readonly name: string;
  readonly earthing: string;
  readonly standard: string;
}

export interface NewScheduleAnswer {
  readonly text: string;
}

export const choicesRequest = "wayfile/choices";
export const newScheduleRequest = "wayfile/newSchedule";
