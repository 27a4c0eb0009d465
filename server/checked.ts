/** Between a program and what started it: that a first schedule was checked, whatever came of it. */
import { channel } from "node:diagnostics_channel";

export const checkedChannel = "wayfile:checked";

const checked = channel(checkedChannel);

export const announceChecked = (): void => checked.publish(undefined);
