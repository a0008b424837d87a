import type { WorkspaceChoices } from './model/workspace-choices';

/** A workspace that chooses nothing. By itself, so that a start need not load the model. */
export const noChoices: WorkspaceChoices = { check: [], leaveOut: [], levels: {} };
